package org.roundsman.alarms.quality;

import java.time.Instant;
import java.util.Optional;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.Severity;

/**
 * One episode, as far as the quality of alarms goes.
 *
 * @param deviceId 0 where the resource is no device
 * @param device its name with its site, or empty
 * @param name of the alarm, for people
 * @param counts no other alarm explains it, and it never lay in planned work
 */
public record Raised(
        long alarmId,
        AlarmType type,
        long deviceId,
        String device,
        String name,
        Instant at,
        Optional<Instant> cleared,
        Severity highest,
        boolean counts) {}
