package org.roundsman.rules.fold;

import org.roundsman.alarms.Severity;

/** What a figure led to. Times are milliseconds since 1970-01-01T00:00Z. */
public sealed interface Decision {

    /** Nothing that anybody must hear of. */
    record Nothing() implements Decision {
        static final Nothing NOTHING = new Nothing();
    }

    /**
     * An alarm is raised, or has another severity.
     *
     * @param began when the figure began to be bad
     * @param figure that decided it
     * @param threshold of that severity
     * @param heldMillis for how long the figure held before this was decided
     */
    record Raise(Severity severity, long began, double figure, double threshold, long heldMillis) implements Decision {}

    /**
     * The alarm clears.
     *
     * @param threshold at which the lowest level clears
     */
    record Clear(double figure, double threshold, long heldMillis) implements Decision {}
}
