package org.roundsman.alarms;

import java.time.Instant;

/** What was seen: that something is wrong, or is no longer wrong. Nothing is stored when it says what is known already. */
public sealed interface Signal {

    AlarmKey key();

    /** When it was found out. */
    Instant at();

    /** What is seen, with the figures, in one or two sentences. */
    String text();

    /**
     * Something is wrong, or is wrong in another degree. Repeating it with the same severity is no status change; the text
     * of the alarm is kept up to date.
     *
     * @param began when the fault began, not later than {@code at}; counts for the first raise of an episode
     */
    record Raise(AlarmKey key, Severity severity, Instant began, Instant at, String text) implements Signal {
        public Raise {
            if (began.isAfter(at)) {
                throw new IllegalArgumentException("began at " + began + ", after it was seen at " + at);
            }
        }
    }

    /** It is no longer wrong. Of a key that is unknown or clear already: ignored. */
    record Clear(AlarmKey key, Instant at, String text) implements Signal {}
}
