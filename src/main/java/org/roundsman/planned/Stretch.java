package org.roundsman.planned;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A stretch of time.
 *
 * @param from first moment
 * @param to end, exclusive; after {@code from}
 */
public record Stretch(Instant from, Instant to) {

    public Stretch {
        if (!from.isBefore(to)) {
            throw new IllegalArgumentException("a stretch from " + from + " to " + to + " has no length");
        }
    }

    /** Empty where there would be no length. */
    public static Optional<Stretch> of(Instant from, Instant to) {
        return from.isBefore(to) ? Optional.of(new Stretch(from, to)) : Optional.empty();
    }

    public boolean covers(Instant at) {
        return !at.isBefore(from) && at.isBefore(to);
    }

    public Duration length() {
        return Duration.between(from, to);
    }

    /** The part between these moments; empty where there is none. */
    public Optional<Stretch> within(Instant begin, Instant end) {
        return of(from.isBefore(begin) ? begin : from, to.isAfter(end) ? end : to);
    }

    /** The same time as ascending stretches that neither overlap nor touch. */
    public static List<Stretch> merged(Collection<Stretch> stretches) {
        List<Stretch> sorted = stretches.stream()
                .sorted(Comparator.comparing(Stretch::from).thenComparing(Stretch::to))
                .toList();
        List<Stretch> merged = new ArrayList<>();
        for (Stretch next : sorted) {
            Stretch last = merged.isEmpty() ? null : merged.get(merged.size() - 1);
            if (last == null || last.to.isBefore(next.from)) {
                merged.add(next);
            } else if (next.to.isAfter(last.to)) {
                merged.set(merged.size() - 1, new Stretch(last.from, next.to));
            }
        }
        return merged;
    }

    /**
     * How much of the time between these moments lies in the stretches.
     *
     * @param merged stretches that do not overlap
     */
    public static Duration shared(List<Stretch> merged, Instant from, Instant to) {
        Duration sum = Duration.ZERO;
        for (Stretch stretch : merged) {
            sum = sum.plus(stretch.within(from, to).map(Stretch::length).orElse(Duration.ZERO));
        }
        return sum;
    }

    /**
     * What is left of the stretches without other time.
     *
     * @param stretches ascending, without overlap; so is what is left
     * @param out in any order; they may overlap
     */
    public static List<Stretch> without(List<Stretch> stretches, Collection<Stretch> out) {
        List<Stretch> left = stretches;
        for (Stretch gone : merged(out)) {
            left = left.stream()
                    .flatMap(stretch -> Stream.concat(
                            stretch.within(Instant.MIN, gone.from).stream(),
                            stretch.within(gone.to, Instant.MAX).stream()))
                    .toList();
        }
        return left;
    }
}
