package org.roundsman.web.page;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.roundsman.measure.Condition;

/**
 * A condition on a page: shape, word and how long it has gone on.
 *
 * @param word the condition's word, also the name of its shape and colour
 * @param text what stands beside the shape
 * @param since how long, in words, or empty
 * @param at the same as a moment for machines, or empty
 */
public record State(String word, String text, String since, String at) {

    /** Of one device. */
    public static State of(Condition condition, Optional<Instant> since, Instant now) {
        return of(condition, condition.word(), since, now);
    }

    /** With words of its own. */
    public static State of(Condition condition, String text, Optional<Instant> since, Instant now) {
        return new State(
                condition.word(),
                text,
                since.map(at -> "for " + Words.length(Duration.between(at, now)))
                        .orElse(""),
                since.map(Instant::toString).orElse(""));
    }
}
