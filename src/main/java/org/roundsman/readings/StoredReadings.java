package org.roundsman.readings;

import io.micrometer.core.instrument.MeterRegistry;
import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import jakarta.interceptor.Interceptor;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import javax.sql.DataSource;
import org.roundsman.measure.Reading;
import org.roundsman.polling.ReadingSink;
import org.roundsman.readings.store.ReadingWriter;
import org.roundsman.readings.store.WriterListener;
import org.roundsman.readings.store.WriterSettings;

/** Where the central's rounds put their readings: a queue, and a thread that stores them. */
@ApplicationScoped
public class StoredReadings implements ReadingSink, BacklogSource, AutoCloseable {

    private final ReadingWriter writer;

    @Inject
    StoredReadings(
            DataSource source,
            Clock clock,
            ReadingsSettings settings,
            MeterRegistry registry,
            Event<ReadingsStored> news) {
        this(source, clock, settings.writing(), registry, new ToldReadings(registry, news::fire));
    }

    private StoredReadings(
            DataSource source, Clock clock, WriterSettings writing, MeterRegistry registry, WriterListener listener) {
        try {
            writer = new ReadingWriter(source, clock, writing, listener);
        } catch (IOException e) {
            throw new IllegalStateException(
                    "The folder " + writing.spoolFolder() + " for waiting readings cannot be used: " + e
                            + ". Make it writable for this user, or name another by roundsman.readings.spool-folder.",
                    e);
        }
        WriterMeters.watch(registry, writer);
    }

    /** Outside of the container, with the usual settings; {@link #begin} starts it. */
    public static StoredReadings open(DataSource source, Clock clock, Path spoolFolder, MeterRegistry registry) {
        return new StoredReadings(source, clock, WriterSettings.in(spoolFolder), registry, new WriterMeters(registry));
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
        begin();
    }

    /** Begins to store; outside of the container whoever made this calls it once. */
    public void begin() {
        writer.start();
    }

    /** After the rounds have stopped, and while the database still runs. */
    void stop(@Observes @Priority(Interceptor.Priority.LIBRARY_AFTER + 500) ShutdownEvent event) throws IOException {
        close();
    }

    /** Stores what waits, or leaves it on disk for the next start. */
    @Override
    public void close() throws IOException {
        writer.close();
    }
}
