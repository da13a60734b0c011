package org.roundsman.readings;

import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.roundsman.measure.Condition;
import org.roundsman.measure.Outcome;

/**
 * What the last rounds of one device say of it.
 *
 * @param condition as of the last round; nobody has been looking since when {@link #due} lies long past
 * @param since start of that condition
 * @param misses unanswered rounds in a row, counted to three: the third makes the device silent
 * @param missingSince the first of them, when there is one
 * @param lastAnswered start of the last round that was answered
 * @param lastRound start of the last round
 * @param nextInSeconds when the next round was due, counted from {@code lastRound}
 * @param outcome of the last round
 * @param uptime seconds, at the last answered round
 * @param clients at the last answered round
 */
public record DeviceState(
        long deviceId,
        Condition condition,
        Instant since,
        int misses,
        Optional<Instant> missingSince,
        Optional<Instant> lastAnswered,
        Instant lastRound,
        int nextInSeconds,
        Outcome outcome,
        OptionalDouble uptime,
        OptionalInt clients) {

    /** When the next round is due. */
    public Instant due() {
        return lastRound.plusSeconds(nextInSeconds);
    }
}
