package org.roundsman.readings;

import io.micrometer.core.instrument.MeterRegistry;
import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import jakarta.interceptor.Interceptor;
import java.io.IOException;
import java.time.Clock;
import java.time.Duration;
import javax.sql.DataSource;
import org.roundsman.measure.Reading;
import org.roundsman.polling.ReadingSink;
import org.roundsman.readings.store.ReadingWriter;
import org.roundsman.readings.store.WriterSettings;

/** Where the central's rounds put their readings: a queue, and a thread that stores them. */
@ApplicationScoped
public class StoredReadings implements ReadingSink, BacklogSource {

    private final ReadingWriter writer;

    @Inject
    public StoredReadings(DataSource source, Clock clock, ReadingsSettings settings, MeterRegistry registry) {
        WriterSettings writing = new WriterSettings(
                settings.queueSize(),
                settings.batchSize(),
                settings.flush(),
                settings.spoolFolder().toAbsolutePath().normalize(),
                settings.spoolBytes(),
                Duration.ofMillis(250),
                Duration.ofSeconds(10));
        try {
            writer = new ReadingWriter(source, clock, writing, new WriterMeters(registry));
        } catch (IOException e) {
            throw new IllegalStateException(
                    "The folder " + writing.spoolFolder() + " for waiting readings cannot be used: " + e
                            + ". Make it writable for this user, or name another by roundsman.readings.spool-folder.",
                    e);
        }
        WriterMeters.watch(registry, writer);
    }

    @Override
    public void accept(Reading reading) {
        writer.accept(reading);
    }

    @Override
    public Backlog backlog() {
        return writer.backlog();
    }

    void start(@Observes StartupEvent event) {
        writer.start();
    }

    /** After the rounds have stopped, and while the database still runs. */
    void stop(@Observes @Priority(Interceptor.Priority.LIBRARY_AFTER + 500) ShutdownEvent event) throws IOException {
        writer.close();
    }
}
