package org.roundsman.triage;

import java.time.Duration;
import java.time.Instant;
import java.util.Set;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.CauseKind;

/**
 * A cause that was over a short while ago: devices that it took down may still be starting, or not have been asked again.
 *
 * @param name what it was in words, such as {@code switch sw-2}
 * @param endedAt when it was over
 * @param affected devices that it explained
 */
public record EndedCause(AlarmKey key, CauseKind cause, String name, Instant endedAt, Set<Long> affected) {

    /** So long afterwards, devices that it took down may still be starting (common practice, no source). */
    public static final Duration STARTING = Duration.ofMinutes(5);

    public EndedCause {
        affected = Set.copyOf(affected);
    }

    /** Whether devices may still be starting at that moment. */
    public boolean recent(Instant now) {
        return endedAt.plus(STARTING).isAfter(now);
    }
}
