package org.roundsman.alarms.life;

import java.util.Optional;
import org.roundsman.alarms.Severity;

/**
 * What a signal made of an alarm.
 *
 * @param state afterwards; empty for an alarm that never was
 * @param reopened a closed alarm is open again, because it became worse than it had been
 */
public record Step(Kind kind, Optional<AlarmState> state, boolean reopened) {

    /** What happened. */
    public enum Kind {
        NOTHING,
        /** The text was brought up to date; no status change. */
        TEXT,
        /** Another severity. */
        SEVERITY,
        /** A new episode. */
        BEGAN,
        /** The episode is over. */
        ENDED
    }

    /** Whether it is a status change, which the history keeps. */
    public boolean statusChange() {
        return kind != Kind.NOTHING && kind != Kind.TEXT;
    }

    /** The severity that the history keeps; empty for a clear. */
    public Optional<Severity> changedTo() {
        return kind == Kind.ENDED ? Optional.empty() : state.map(AlarmState::severity);
    }
}
