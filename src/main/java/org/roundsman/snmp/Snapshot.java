package org.roundsman.snmp;

import java.time.Instant;

/**
 * A walk and when it was taken.
 *
 * @param at as well as it is known
 */
public record Snapshot(Walk walk, Instant at) {}
