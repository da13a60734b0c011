package org.roundsman.readings.spans;

import org.roundsman.measure.Condition;
import org.roundsman.measure.Outcome;

/**
 * What finding spans remembers of a device from round to round. Times are milliseconds since 1970-01-01T00:00Z.
 *
 * @param last the last round
 * @param condition of the span that goes on
 * @param since its start
 * @param misses unanswered rounds in a row, 0 to 3
 * @param missingSince the first of them, meaningless without misses
 * @param missingOutcome how that one ended, null without misses
 */
public record SpanState(
        Round last, Condition condition, long since, int misses, long missingSince, Outcome missingOutcome) {

    /** A state without unanswered rounds behind it. */
    public static SpanState of(Round last, Condition condition, long since) {
        return new SpanState(last, condition, since, 0, 0, null);
    }

    SpanState after(Round round) {
        return new SpanState(round, condition, since, 0, 0, null);
    }

    SpanState missed(Round round) {
        return misses == 0
                ? new SpanState(round, condition, since, 1, round.at(), round.outcome())
                : new SpanState(round, condition, since, Math.min(misses + 1, 3), missingSince, missingOutcome);
    }

    SpanState turned(Condition to, long from) {
        return new SpanState(last, to, from, misses, missingSince, missingOutcome);
    }
}
