package org.roundsman.discovery;

import java.time.Instant;

/**
 * An address that is not ours: sweeps of its site leave it out until somebody takes it back.
 *
 * @param by who said so
 */
public record Aside(String host, int port, String by, Instant at) {}
