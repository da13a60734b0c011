package org.roundsman.demo.agent;

/**
 * What a request may see: one agent's variables, in one version of the protocol.
 *
 * @param versionOne SNMP v1 knows neither Counter64 nor exceptions
 */
record View(AgentState state, Shape shape, boolean versionOne) {}
