package org.roundsman.readings;

import java.time.Duration;
import java.time.Instant;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.roundsman.measure.Condition;
import org.roundsman.planned.Stretch;

/**
 * How long a device was in each condition within a period.
 *
 * <p>Availability is answering / (answering + silent). Planned work leaves both sides: whatever the device did in it, that
 * time stands beside the figure as planned. Refusing counts on neither side: a device that rejects our
 * credentials proves that it is switched on and reachable, but not that it serves anybody, and the fault is as often ours
 * as the device's. It stands beside the figure, as does coverage, which says for how much of the period we were looking.
 *
 * @param period the whole period
 * @param answering time outside planned work in which it answered
 * @param silent time outside planned work in which it did not
 * @param refusing time outside planned work in which it rejected our credentials
 * @param planned time of planned work, watched or not
 */
public record Availability(Duration period, Duration answering, Duration silent, Duration refusing, Duration planned) {

    /**
     * Adds up spans.
     *
     * @param spans of one device, in any order, without overlap; what they leave out is unwatched
     * @param from start of the period
     * @param to its end, exclusive
     * @param known how far a span reaches that still goes on: when the device's next round is due
     * @param planned when the device was worked on, in any order; they may overlap
     */
    public static Availability of(List<Span> spans, Instant from, Instant to, Instant known, List<Stretch> planned) {
        List<Stretch> merged = Stretch.merged(planned);
        Map<Condition, Duration> sums = new EnumMap<>(Condition.class);
        for (Span span : spans) {
            Instant begin = later(span.from(), from);
            Instant end = span.to().orElse(known);
            end = end.isAfter(to) ? to : end;
            if (end.isAfter(begin)) {
                Duration counted = Duration.between(begin, end).minus(Stretch.shared(merged, begin, end));
                sums.merge(span.condition(), counted, Duration::plus);
            }
        }
        return new Availability(
                Duration.between(from, to),
                sums.getOrDefault(Condition.ANSWERING, Duration.ZERO),
                sums.getOrDefault(Condition.SILENT, Duration.ZERO),
                sums.getOrDefault(Condition.REFUSING, Duration.ZERO),
                Stretch.shared(merged, from, to));
    }

    private static Instant later(Instant a, Instant b) {
        return a.isAfter(b) ? a : b;
    }

    /** Time outside planned work in which nobody was looking. */
    public Duration unwatched() {
        return period.minus(planned).minus(answering).minus(silent).minus(refusing);
    }

    /** Answering / (answering + silent), 0 to 1; empty when the device did neither. */
    public OptionalDouble share() {
        long both = answering.plus(silent).toMillis();
        return both == 0 ? OptionalDouble.empty() : OptionalDouble.of((double) answering.toMillis() / both);
    }

    /** Share of the time outside planned work in which we were looking, 0 to 1; empty when there was no such time. */
    public OptionalDouble coverage() {
        long counted = period.minus(planned).toMillis();
        return counted == 0
                ? OptionalDouble.empty()
                : OptionalDouble.of(1 - (double) unwatched().toMillis() / counted);
    }
}
