/**
 * What hangs on what: reads ports, neighbours, forwarding tables and power from switches and gateways beside the rounds,
 * and finds out on which port each device hangs, how that is known, and what speaks against it. May import shared, system,
 * audit, timeline, measure, fleet, snmp, polling. Owns wiring_read, wiring_supply, wiring_port, wiring_address,
 * wiring_neighbour, wiring_learnt, wiring_word, wiring_attachment.
 */
package org.roundsman.topology;
