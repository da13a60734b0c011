package org.roundsman.snmp;

import java.time.Duration;

/**
 * How to ask.
 *
 * @param timeout wait for one reply
 * @param retries further tries of one request, 0 or more
 * @param factsEvery how often the slow facts are read
 * @param maxRows rows of one table after which reading stops with a remark
 * @param sockets UDP sockets, each with its own receiving thread
 */
public record SnmpSettings(Duration timeout, int retries, Duration factsEvery, int maxRows, int sockets) {

    public static SnmpSettings defaults() {
        return new SnmpSettings(Duration.ofSeconds(2), 1, Duration.ofHours(1), 20_000, 2);
    }
}
