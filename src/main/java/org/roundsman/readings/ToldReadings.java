package org.roundsman.readings;

import io.micrometer.core.instrument.MeterRegistry;
import java.util.List;
import java.util.function.Consumer;
import org.jboss.logging.Logger;
import org.roundsman.measure.Reading;

/** Counts what the writer does, and tells those downstream what was stored. */
final class ToldReadings extends WriterMeters {

    private static final Logger LOG = Logger.getLogger(ToldReadings.class);

    private final Consumer<ReadingsStored> news;

    ToldReadings(MeterRegistry registry, Consumer<ReadingsStored> news) {
        super(registry);
        this.news = news;
    }

    /** What an observer gets wrong must not keep readings from being stored: it is said, and storing goes on. */
    @Override
    public void committed(List<Reading> readings) {
        try {
            news.accept(new ReadingsStored(readings));
        } catch (RuntimeException e) {
            LOG.error("Readings were stored, but somebody who was told of them failed", e);
        }
    }
}
