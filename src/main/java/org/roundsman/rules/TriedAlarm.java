package org.roundsman.rules;

import java.time.Instant;
import java.util.Optional;
import org.roundsman.alarms.Severity;

/**
 * An alarm that there would have been.
 *
 * @param part of the device, such as {@code radio 2}, with the network's name where it is about one; mostly empty
 * @param ended empty where it went on at the end of the time that was looked at
 * @param highest severity that it had
 * @param why the figures that raised it to that severity
 */
public record TriedAlarm(
        long deviceId,
        String device,
        String site,
        String customer,
        String timeZone,
        String part,
        Instant began,
        Instant raised,
        Optional<Instant> ended,
        Severity highest,
        String why) {

    /** Whether the other is of the same part of the same device at the same time. */
    public boolean overlaps(TriedAlarm other) {
        return deviceId == other.deviceId
                && part.equals(other.part)
                && !began.isAfter(other.ended.orElse(Instant.MAX))
                && !other.began.isAfter(ended.orElse(Instant.MAX));
    }
}
