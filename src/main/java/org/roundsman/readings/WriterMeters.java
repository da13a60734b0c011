package org.roundsman.readings;

import io.micrometer.core.instrument.Counter;
import io.micrometer.core.instrument.Gauge;
import io.micrometer.core.instrument.MeterRegistry;
import io.micrometer.core.instrument.Timer;
import java.util.concurrent.TimeUnit;
import org.roundsman.readings.store.BatchStore;
import org.roundsman.readings.store.ReadingWriter;
import org.roundsman.readings.store.WriterListener;

/** Counts what the writer does. */
class WriterMeters implements WriterListener {

    private static final String PREFIX = "roundsman.readings.";

    private final Timer batches;
    private final Counter rows;
    private final Counter stored;
    private final Counter repeated;
    private final Counter unknown;
    private final Counter failures;
    private final Counter spilled;
    private final Counter lost;
    private final Counter aside;

    WriterMeters(MeterRegistry registry) {
        batches = Timer.builder(PREFIX + "batches")
                .description("Transactions that stored readings")
                .publishPercentileHistogram()
                .register(registry);
        rows = counter(registry, "rows", "Rows copied into the tables of raw readings");
        stored = counter(registry, "stored", "Readings stored");
        repeated = counter(registry, "repeated", "Readings that were stored before");
        unknown = counter(registry, "unknown.device", "Readings of devices that do not exist any more");
        failures = counter(registry, "failures", "Batches that the database did not take");
        spilled = counter(registry, "spilled", "Readings that went to disk to wait");
        lost = counter(registry, "lost", "Readings that could not be kept anywhere");
        aside = counter(registry, "aside", "Readings put aside since no table can hold them");
    }

    private static Counter counter(MeterRegistry registry, String name, String description) {
        return Counter.builder(PREFIX + name).description(description).register(registry);
    }

    static void watch(MeterRegistry registry, ReadingWriter writer) {
        Gauge.builder(PREFIX + "queued", writer, w -> w.backlog().queued())
                .description("Readings waiting in memory")
                .register(registry);
        Gauge.builder(PREFIX + "waiting.on.disk", writer, w -> w.backlog().spilled())
                .description("Readings waiting on disk")
                .register(registry);
    }

    @Override
    public void stored(BatchStore.Stored batch, long nanoseconds) {
        batches.record(nanoseconds, TimeUnit.NANOSECONDS);
        rows.increment(batch.rows());
        stored.increment(batch.readings());
        repeated.increment(batch.known());
        unknown.increment(batch.unknownDevice());
    }

    @Override
    public void failed() {
        failures.increment();
    }

    @Override
    public void spilled(int readings) {
        spilled.increment(readings);
    }

    @Override
    public void lost(int readings) {
        lost.increment(readings);
    }

    @Override
    public void putAside() {
        aside.increment();
    }
}
