package org.roundsman.web.device;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;
import org.roundsman.measure.Condition;
import org.roundsman.measure.Outcome;
import org.roundsman.readings.Span;
import org.roundsman.web.page.State;
import org.roundsman.web.page.Words;

/** One span as it is shown. */
record SpanLine(State state, String from, String to, String length, String cause) {

    static SpanLine of(Span span, ZoneId zone, Instant now) {
        return new SpanLine(
                State.of(span.condition(), Optional.empty(), now),
                Words.moment(span.from(), zone),
                span.to().map(at -> Words.moment(at, zone)).orElse("goes on"),
                Words.length(Duration.between(span.from(), span.to().orElse(now))),
                span.condition() == Condition.ANSWERING
                        ? ""
                        : span.outcome().map(Outcome::text).orElse(""));
    }
}
