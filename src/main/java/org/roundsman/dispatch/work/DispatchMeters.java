package org.roundsman.dispatch.work;

import io.micrometer.core.instrument.Counter;
import io.micrometer.core.instrument.MeterRegistry;
import io.micrometer.core.instrument.Timer;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Supplier;

/** Counts what becomes of reports; names begin with {@code roundsman.reports}. */
public final class DispatchMeters {

    private final Counter built;
    private final Timer building;
    private final AtomicLong waiting = new AtomicLong();

    public DispatchMeters(MeterRegistry registry) {
        built = Counter.builder("roundsman.reports.built")
                .description("Reports whose figures were worked out and stored")
                .register(registry);
        building = Timer.builder("roundsman.reports.building")
                .description("Working out the figures of one report, whether it went well or not")
                .publishPercentileHistogram()
                .register(registry);
        registry.gauge("roundsman.reports.waiting", waiting);
    }

    void built() {
        built.increment();
    }

    <T> T timed(Supplier<T> work) {
        return building.record(work);
    }

    /** How many wait in the queue or are being built. */
    void waiting(long count) {
        waiting.set(count);
    }
}
