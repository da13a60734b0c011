package org.roundsman.alarms;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * One time that an alarm was active: from raise to clear.
 *
 * @param began when the fault began, at or before the raise
 * @param cleared empty while active
 * @param severity the present or last one
 * @param highest the worst one of the episode
 * @param text what was seen last
 * @param summary what was said when it cleared, or empty
 * @param causedBy id of the alarm that explains this one
 * @param causedByEpisode and its episode
 * @param affected devices that suffered, without the resource itself
 * @param planned lies in planned work now, or did when it cleared
 * @param wasPlanned lay in planned work at any moment
 */
public record Episode(
        long id,
        long alarmId,
        Instant began,
        Instant raised,
        Optional<Instant> cleared,
        Severity severity,
        Severity highest,
        String text,
        String summary,
        CauseKind cause,
        OptionalLong causedBy,
        OptionalLong causedByEpisode,
        List<String> evidence,
        Impact impact,
        List<Affected> affected,
        boolean settled,
        boolean planned,
        boolean wasPlanned) {

    /** A device, with the name that it had then. */
    public record Affected(long deviceId, String name) {}

    public Episode {
        evidence = List.copyOf(evidence);
        affected = List.copyOf(affected);
    }

    /** How long the fault has lasted, up to now or its end. */
    public Duration duration(Instant now) {
        return Duration.between(began, cleared.orElse(now));
    }
}
