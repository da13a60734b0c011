/**
 * The invented fleet: customers, sites and devices that nobody has, their cables, a generative model of how they are used,
 * agents that answer for them on loopback and tell what happens to them, faults, and 13 weeks of history from the same
 * model. Has its own OID tables, never the decoder's. May import shared, system, measure, fleet. Owns demo_history,
 * demo_fleet.
 */
package org.roundsman.demo;
