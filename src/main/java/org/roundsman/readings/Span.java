package org.roundsman.readings;

import java.time.Instant;
import java.util.Optional;
import org.roundsman.measure.Condition;
import org.roundsman.measure.Outcome;

/**
 * A stretch of time in which a device was in one condition.
 *
 * @param from first moment
 * @param to end, exclusive; empty while it goes on
 * @param outcome what the span's first round met, empty when unwatched
 */
public record Span(Instant from, Optional<Instant> to, Condition condition, Optional<Outcome> outcome) {}
