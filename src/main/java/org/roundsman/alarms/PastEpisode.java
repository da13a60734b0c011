package org.roundsman.alarms;

import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;

/**
 * What a look back needs to know of one time that an alarm was active.
 *
 * @param deviceId empty where the resource is no device
 * @param siteId at the time of the raise
 * @param zone of the site
 * @param name of the resource: a device with its part, or the site
 * @param began when the fault began, at or before the raise
 * @param cleared empty while active
 * @param explainedBy the episode that explains this one; empty of a root cause
 * @param people who would have been there, worked out while it was active
 * @param planned lay in planned work at any moment
 * @param affected devices that suffered, without the resource itself
 * @param taken when one of us first acknowledged or took it
 */
public record PastEpisode(
        long id,
        long alarmId,
        AlarmType type,
        OptionalLong deviceId,
        OptionalLong siteId,
        ZoneId zone,
        String name,
        Instant began,
        Instant raised,
        Optional<Instant> cleared,
        Severity highest,
        CauseKind cause,
        OptionalLong explainedBy,
        OptionalInt people,
        boolean planned,
        Set<Long> affected,
        Optional<Instant> taken) {

    public PastEpisode {
        affected = Set.copyOf(affected);
    }
}
