package org.roundsman.readings.spans;

import org.roundsman.measure.Outcome;

/**
 * What spans need to know of one round.
 *
 * @param at when it began, in milliseconds since 1970-01-01T00:00Z
 * @param outcome how it ended
 * @param nextSeconds when the next one was due, from {@code at}
 */
public record Round(long at, Outcome outcome, int nextSeconds) {

    /** When the next round was due. */
    public long due() {
        return at + 1000L * nextSeconds;
    }

    /** After this time a next round is so late that nobody was looking in between: two and a half intervals. */
    public long blindAfter() {
        return at + 2500L * nextSeconds;
    }
}
