package org.roundsman.reports;

import java.time.Duration;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * A room that needs attention, told by its access point.
 *
 * @param place where it is, or empty
 * @param radio whose channel is busy
 * @param figure per cent for {@link Reason#BUSY_CHANNEL} (95th percentile)
 * @param time over 70 % for {@link Reason#BUSY_CHANNEL}; silent for the others
 * @param times how often it was silent
 */
public record Room(
        long siteId,
        String site,
        long deviceId,
        String device,
        String place,
        Reason reason,
        OptionalInt radio,
        OptionalDouble figure,
        Duration time,
        int times) {

    /** Why. The name is what reports store; never renamed. */
    public enum Reason {
        /** The channel was over 70 % for ten hours or more, or its 95th percentile is 70 % or more. */
        BUSY_CHANNEL,
        /** Silent three times or more by itself. */
        OFTEN_AWAY,
        /** Silent for four hours or more by itself. */
        LONG_AWAY
    }
}
