package org.roundsman.web.health;

import io.micrometer.core.instrument.Measurement;
import io.micrometer.core.instrument.Meter;
import io.micrometer.core.instrument.MeterRegistry;
import io.micrometer.core.instrument.Timer;
import io.micrometer.core.instrument.distribution.ValueAtPercentile;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.concurrent.TimeUnit;
import java.util.stream.StreamSupport;
import org.roundsman.web.page.Words;

/** Reads meters as a person does. */
@ApplicationScoped
class Meters {

    private final MeterRegistry registry;

    Meters(MeterRegistry registry) {
        this.registry = registry;
    }

    /** The sum over all meters of that name; empty when there is none. */
    OptionalDouble value(String name) {
        Collection<Meter> meters = registry.find(name).meters();
        return meters.isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(meters.stream().mapToDouble(Meters::first).sum());
    }

    private static double first(Meter meter) {
        return StreamSupport.stream(meter.measure().spliterator(), false)
                .mapToDouble(Measurement::getValue)
                .findFirst()
                .orElse(0);
    }

    String count(String name) {
        return Words.figure(value(name), 0, "");
    }

    /** Median, 99th percentile and greatest of the recent values of a timer. */
    String times(String name) {
        Timer timer = registry.find(name).timer();
        if (timer == null || timer.count() == 0) {
            return Words.NOT_AVAILABLE;
        }
        StringBuilder text = new StringBuilder();
        for (ValueAtPercentile at : timer.takeSnapshot().percentileValues()) {
            text.append(Words.figure(at.percentile() * 100, 0, ""))
                    .append("\u00a0% within ")
                    .append(Words.figure(at.value(TimeUnit.MILLISECONDS), 1, "ms"))
                    .append(", ");
        }
        return text.append("at most ")
                .append(Words.figure(timer.max(TimeUnit.MILLISECONDS), 1, "ms"))
                .toString();
    }

    /** Every meter of our own, by name. */
    List<OwnHealth.Line> own() {
        return registry.getMeters().stream()
                .filter(meter -> meter.getId().getName().startsWith("roundsman."))
                .sorted(Comparator.comparing(
                        meter -> meter.getId().getName() + meter.getId().getTags()))
                .map(Meters::line)
                .toList();
    }

    private static OwnHealth.Line line(Meter meter) {
        StringBuilder tags = new StringBuilder();
        meter.getId().getTags().forEach(tag -> tags.append(' ').append(tag.getValue()));
        String description =
                meter.getId().getDescription() == null ? "" : meter.getId().getDescription();
        return new OwnHealth.Line(meter.getId().getName() + tags, Words.figure(first(meter), 2, ""), description);
    }
}
