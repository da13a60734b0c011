package org.roundsman.triage.impact;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.roundsman.measure.Condition;
import org.roundsman.planned.Stretch;
import org.roundsman.readings.Span;

/** Arithmetic of stretches: service hours without planned work, and how much of a condition lies in them. */
public final class MonthTime {

    private MonthTime() {}

    /**
     * Service hours without the work planned for the site and, unless 0, that of one device.
     *
     * @param open neither overlapping nor touching
     */
    public static List<Stretch> without(List<Stretch> open, Map<Long, List<Stretch>> work, long device) {
        List<Stretch> planned = new ArrayList<>(work.getOrDefault(0L, List.of()));
        planned.addAll(device == 0 ? List.of() : work.getOrDefault(device, List.of()));
        return Stretch.without(open, planned);
    }

    /** How long these spans were in that condition within the stretches, up to now. */
    public static Duration sum(List<Stretch> counted, List<Span> spans, Condition condition, Instant now) {
        Duration sum = Duration.ZERO;
        for (Span span : spans) {
            Instant end = earlier(span.to().orElse(now), now);
            if (span.condition() == condition && span.from().isBefore(end)) {
                sum = sum.plus(Stretch.shared(counted, span.from(), end));
            }
        }
        return sum;
    }

    /** How long they are together. */
    public static Duration length(List<Stretch> stretches) {
        return stretches.stream().map(Stretch::length).reduce(Duration.ZERO, Duration::plus);
    }

    private static Instant earlier(Instant a, Instant b) {
        return a.isBefore(b) ? a : b;
    }
}
