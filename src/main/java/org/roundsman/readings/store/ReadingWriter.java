package org.roundsman.readings.store;

import java.io.IOException;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import javax.sql.DataSource;
import org.jboss.logging.Logger;
import org.roundsman.measure.Reading;
import org.roundsman.polling.ReadingSink;
import org.roundsman.readings.Backlog;
import org.roundsman.readings.spool.Spool;

/**
 * Takes readings from rounds and stores them in batches on a thread of its own. While the database takes nothing they
 * wait on disk, in order; nothing is stored twice, also when it is not known whether the last commit went through.
 */
public final class ReadingWriter implements ReadingSink, AutoCloseable {

    private static final Logger LOG = Logger.getLogger(ReadingWriter.class);
    private static final Duration LAST_DRAIN = Duration.ofSeconds(5);

    private final WriterSettings settings;
    private final Clock clock;
    private final WriterListener listener;
    private final BatchStore store;
    private final Waiting waiting;
    private final SetAside aside;
    private final Thread thread = new Thread(this::run, "readings-writer");
    private volatile Instant failingSince;
    private volatile String trouble;
    private volatile long drainUntil;
    private volatile boolean stopping;
    private Duration pause;

    /**
     * Opens the spool; what an earlier process left there is stored first.
     *
     * @throws IOException when the spool's folder cannot be used
     */
    public ReadingWriter(DataSource source, Clock clock, WriterSettings settings, WriterListener listener)
            throws IOException {
        this.settings = settings;
        this.clock = clock;
        this.listener = listener;
        this.store = new BatchStore(source, clock);
        this.waiting = new Waiting(settings, new Spool(settings.spoolFolder(), settings.spoolBytes()), listener);
        this.aside = new SetAside(settings.spoolFolder(), clock);
        this.pause = settings.firstRetry();
        thread.setDaemon(true);
    }

    public ReadingWriter start() {
        thread.start();
        return this;
    }

    @Override
    public void accept(Reading reading) {
        waiting.add(reading);
    }

    /** How far storing is behind. */
    public Backlog backlog() {
        Optional<String> wrong = Optional.ofNullable(trouble);
        return new Backlog(
                waiting.queued(),
                waiting.spilled(),
                waiting.lost(),
                Optional.ofNullable(failingSince),
                waiting.trouble()
                        .map(disk ->
                                wrong.map(database -> database + " " + disk).orElse(disk))
                        .or(() -> wrong),
                waiting.oldest());
    }

    /** Stores what waits if the database takes it within five seconds, and leaves the rest on disk. */
    @Override
    public void close() throws IOException {
        drainUntil = System.nanoTime() + LAST_DRAIN.toNanos();
        stopping = true;
        waiting.hurry();
        try {
            thread.join(LAST_DRAIN.toMillis() + 1_000);
            if (thread.isAlive()) {
                LOG.warn("The database holds the writer up; what waits stays on disk.");
                thread.interrupt();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        waiting.close();
    }

    private void run() {
        try {
            while (!stopping || failingSince == null && System.nanoTime() < drainUntil) {
                if (!waiting.inHand().isEmpty() || !waiting.next().isEmpty()) {
                    storeInHand();
                } else if (stopping) {
                    return;
                }
            }
        } catch (InterruptedException e) {
            LOG.debug("the writer was interrupted");
        } catch (RuntimeException | Error e) {
            trouble = "The writer of readings ended (" + e + "). Start the service again; readings wait on disk.";
            failingSince = clock.instant();
            LOG.error(trouble, e);
            waiting.block();
            throw e;
        }
    }

    private void storeInHand() throws InterruptedException {
        List<Reading> batch = waiting.inHand().readings();
        try {
            long began = System.nanoTime();
            listener.stored(storeOrIsolate(batch), System.nanoTime() - began);
            waiting.done();
            listener.committed(batch);
            recovered();
        } catch (SQLException e) {
            failed(e);
            waiting.block();
            waiting.pause(pause);
            pause = min(pause.multipliedBy(2), settings.lastRetry());
        }
    }

    private static Duration min(Duration a, Duration b) {
        return a.compareTo(b) < 0 ? a : b;
    }

    private BatchStore.Stored storeOrIsolate(List<Reading> batch) throws SQLException {
        try {
            return store.store(batch);
        } catch (SQLException | RuntimeException e) {
            store.forget();
            if (!Failure.ofRows(e)) {
                throw e;
            }
            // perhaps only because a device or a partition went away meanwhile; if not, it is one of these readings
            return isolate(batch);
        }
    }

    /** Stores what can be stored, by halves, and puts aside the readings that no table can hold. */
    private BatchStore.Stored isolate(List<Reading> batch) throws SQLException {
        try {
            return store.store(batch);
        } catch (SQLException | RuntimeException e) {
            if (!Failure.ofRows(e)) {
                throw e;
            }
            if (batch.size() == 1) {
                aside.put(batch.get(0), e);
                listener.putAside();
                return new BatchStore.Stored(0, 0, 0, 0);
            }
            int half = batch.size() / 2;
            return isolate(batch.subList(0, half)).plus(isolate(batch.subList(half, batch.size())));
        }
    }

    private void failed(SQLException e) {
        listener.failed();
        trouble = Failure.words(e);
        if (failingSince == null) {
            failingSince = clock.instant();
            LOG.warn(trouble);
        }
    }

    private void recovered() {
        pause = settings.firstRetry();
        if (failingSince != null) {
            LOG.infof(
                    "The database takes readings again, after %d s; %d wait.",
                    Duration.between(failingSince, clock.instant()).toSeconds(), waiting.queued() + waiting.spilled());
            failingSince = null;
            trouble = null;
        }
    }
}
