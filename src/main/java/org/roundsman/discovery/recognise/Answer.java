package org.roundsman.discovery.recognise;

import java.time.Instant;

/**
 * One address that let us in.
 *
 * @param name sysName, or empty
 * @param startedAt when it says that it started; null where it did not say
 */
public record Answer(long findingId, String host, int port, String name, Instant startedAt, Identity identity) {}
