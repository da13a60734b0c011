package org.roundsman.alarms.life;

import java.time.Instant;
import java.util.Optional;
import org.roundsman.alarms.Severity;

/**
 * An alarm in its current or last episode, as far as signals and people change it.
 *
 * @param cleared empty while active (RFC 8632: is-cleared)
 * @param severity the present one; after the clear, the last one
 * @param textAt when the text was last brought up to date
 * @param summary what was said when it cleared
 */
public record AlarmState(
        Instant began,
        Instant raised,
        Instant changed,
        Optional<Instant> cleared,
        Severity severity,
        Severity highest,
        String text,
        Instant textAt,
        String summary,
        Handling handling) {

    public boolean active() {
        return cleared.isEmpty();
    }

    public AlarmState with(Handling next) {
        return new AlarmState(began, raised, changed, cleared, severity, highest, text, textAt, summary, next);
    }

    AlarmState saying(String next, Instant at) {
        return new AlarmState(began, raised, changed, cleared, severity, highest, next, at, summary, handling);
    }
}
