package org.roundsman.polling;

import java.time.Duration;
import org.roundsman.snmp.Agent;

/**
 * One device to be watched.
 *
 * @param siteId bounds how much is asked of one site at a time
 * @param agent where it is and how it lets us in
 * @param interval time between two rounds, at least one second
 */
public record PollTarget(long deviceId, long siteId, Agent agent, Duration interval) {

    public PollTarget {
        if (interval.compareTo(Duration.ofSeconds(1)) < 0) {
            throw new IllegalArgumentException("interval of " + interval + " for device " + deviceId);
        }
    }
}
