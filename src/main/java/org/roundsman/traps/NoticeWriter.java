package org.roundsman.traps;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.stream.Stream;
import javax.sql.DataSource;
import org.jboss.logging.Logger;
import org.roundsman.timeline.DeviceEvent;
import org.roundsman.timeline.DeviceEvents;

/**
 * The one thread that puts notifications on the timelines, and sums and counts with them. While the database is away, so
 * many wait in memory; what does not fit is not taken.
 */
final class NoticeWriter implements AutoCloseable {

    private static final Logger LOG = Logger.getLogger(NoticeWriter.class);
    private static final int QUEUE = 5_000;
    private static final int AT_ONCE = 500;
    private static final Duration TURN = Duration.ofSeconds(1);
    private static final Duration COUNTS_EVERY = Duration.ofSeconds(5);

    private final DataSource database;
    private final Clock clock;
    private final Allowances allowances;
    private final UnnamedNotifications unnamed;
    private final PortNames ports;
    private final TrapsMeters meters;
    private final Consumer<NotificationReceived> stored;
    private final BlockingQueue<Waiting> queue = new ArrayBlockingQueue<>(QUEUE);
    private final List<Waiting> sums = new ArrayList<>();
    private final CountDownLatch stopping = new CountDownLatch(1);
    private final Thread thread = new Thread(this::run, "trap-events");
    private List<Waiting> inHand = List.of();
    private Instant countedAt = Instant.MIN;
    private boolean failing;

    /**
     * An event that waits to be stored.
     *
     * @param oid the notification's; empty for a sum
     * @param title what the notification is called in the event; of a sum, the last of them
     */
    record Waiting(DeviceEvent event, String oid, NoticeTitle title) {

        /** The event with the name of the port wherever the notification said the number of its interface. */
        DeviceEvent with(Map<Integer, String> ports) {
            String words = title.with(ports);
            return words.equals(title.text())
                    ? event
                    : new DeviceEvent(
                            event.deviceId(),
                            event.at(),
                            event.kind(),
                            event.title().replace(title.text(), words),
                            event.old(),
                            event.fresh(),
                            event.detail().replace(title.text(), words));
        }
    }

    /** What shares its work with this thread. */
    record Parts(
            DataSource database,
            Allowances allowances,
            UnnamedNotifications unnamed,
            TrapsMeters meters,
            PortNames ports) {}

    /** @param stored hears of each notification once it is committed, on this thread */
    NoticeWriter(Parts parts, Clock clock, Consumer<NotificationReceived> stored) {
        this.database = parts.database;
        this.allowances = parts.allowances;
        this.unnamed = parts.unnamed;
        this.meters = parts.meters;
        this.ports = parts.ports;
        this.clock = clock;
        this.stored = stored;
        thread.setDaemon(true);
    }

    void start() {
        thread.start();
    }

    /** False when too many wait already. */
    boolean offer(Waiting waiting) {
        return queue.offer(waiting);
    }

    int waiting() {
        return queue.size();
    }

    private void run() {
        try {
            while (stopping.getCount() > 0) {
                turn(false);
            }
            turn(true);
        } catch (InterruptedException e) {
            LOG.debug("the writer of notifications was interrupted");
        }
    }

    private void turn(boolean last) throws InterruptedException {
        try {
            if (inHand.isEmpty()) {
                inHand = next(last);
            }
            if (sums.isEmpty()) {
                sums.addAll(allowances.sums(clock.instant(), last));
            }
            store();
            count(last);
            failing = false;
        } catch (SQLException e) {
            failed(e);
            stopping.await(TURN.toMillis(), TimeUnit.MILLISECONDS);
        } catch (RuntimeException e) {
            LOG.error("A fault while storing notifications; going on with the next", e);
            inHand = List.of();
            sums.clear();
        }
    }

    private List<Waiting> next(boolean last) throws InterruptedException {
        List<Waiting> batch = new ArrayList<>();
        Waiting first = last ? queue.poll() : queue.poll(TURN.toMillis(), TimeUnit.MILLISECONDS);
        if (first != null) {
            batch.add(first);
            queue.drainTo(batch, last ? QUEUE : AT_ONCE);
        }
        return batch;
    }

    private void store() throws SQLException {
        List<DeviceEvent> events = events();
        if (events.isEmpty()) {
            return;
        }
        try (Connection connection = database.getConnection()) {
            connection.setAutoCommit(false);
            boolean committed = false;
            try {
                DeviceEvents.add(connection, events);
                connection.commit();
                committed = true;
            } finally {
                if (!committed && !connection.isClosed()) {
                    connection.rollback();
                }
                connection.setAutoCommit(true);
            }
        }
        List<Waiting> done = inHand;
        inHand = List.of();
        sums.clear();
        meters.stored.increment(done.size());
        done.forEach(this::tell);
    }

    /** Sums and notifications in the words of the wiring, for which each device is asked for once. */
    private List<DeviceEvent> events() {
        Map<Long, Map<Integer, String>> known = new HashMap<>();
        return Stream.concat(sums.stream(), inHand.stream())
                .map(waiting -> waiting.title.port().isEmpty()
                        ? waiting.event
                        : waiting.with(known.computeIfAbsent(waiting.event.deviceId(), this::portsOf)))
                .toList();
    }

    private Map<Integer, String> portsOf(long device) {
        try {
            return ports.of(device);
        } catch (RuntimeException e) {
            // a number is better than no event; that the database is away is said when the event cannot be stored
            LOG.debugf("The ports of device %d cannot be named: %s", device, e.getMessage());
            return Map.of();
        }
    }

    private void tell(Waiting waiting) {
        try {
            stored.accept(new NotificationReceived(waiting.event.deviceId(), waiting.oid, waiting.event.at()));
        } catch (RuntimeException e) {
            LOG.errorf(e, "What follows a notification of device %d failed", waiting.event.deviceId());
        }
    }

    private void count(boolean last) throws SQLException {
        if (last || !clock.instant().isBefore(countedAt.plus(COUNTS_EVERY))) {
            unnamed.write();
            countedAt = clock.instant();
        }
    }

    private void failed(SQLException e) {
        if (!failing) {
            LOG.warnf("Notifications wait, the database does not take them: %s", e.getMessage());
        }
        failing = true;
    }

    /** Stores what waits, once, and ends. */
    @Override
    public void close() {
        stopping.countDown();
        try {
            thread.join(10_000);
            int left = queue.size() + inHand.size();
            if (left > 0) {
                LOG.warnf("%d notifications are lost with the end of the service", left);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
