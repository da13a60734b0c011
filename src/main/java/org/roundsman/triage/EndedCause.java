package org.roundsman.triage;

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

    public EndedCause {
        affected = Set.copyOf(affected);
    }
}
