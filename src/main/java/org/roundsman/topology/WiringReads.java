package org.roundsman.topology;

import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.runtime.StartupEvent;
import io.quarkus.scheduler.Scheduled;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.enterprise.event.TransactionPhase;
import jakarta.inject.Inject;
import java.time.Clock;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.RejectedExecutionException;
import org.jboss.logging.Logger;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.fleet.FleetChanged;
import org.roundsman.polling.Rounds;
import org.roundsman.snmp.SnmpVisitor;
import org.roundsman.snmp.TableQuestion;
import org.roundsman.snmp.TableReading;
import org.roundsman.topology.read.Tables;

/**
 * Reads the wiring of watched devices beside their rounds: at a slow pace, at once after a restart, when told that something
 * happened, and at a person's wish. One device of a site at a time, a bounded number in all; a silent device is not asked.
 * Thread-safe; nothing here blocks a receiving thread.
 */
@ApplicationScoped
public class WiringReads {

    private static final Logger LOG = Logger.getLogger(WiringReads.class);
    private static final int STORING_THREADS = 2;
    /** So often the list of devices is read even when nobody said that it changed. */
    private static final long LIST_KEPT = 60_000;

    private final Rounds rounds;
    private final SnmpVisitor visitor;
    private final WiringStore store;
    private final TopologyConfig config;
    private final Clock clock;

    /** Guarded by this, as is what follows. */
    private final Map<Long, ReadingTimes> times = new HashMap<>();

    private final Set<Long> busySites = new HashSet<>();
    private int running;
    private long listedAt = Long.MIN_VALUE / 2;
    private boolean stopped;
    private ExecutorService storing;

    @Inject
    WiringReads(Rounds rounds, SnmpVisitor visitor, WiringStore store, TopologyConfig config, Clock clock) {
        this.rounds = rounds;
        this.visitor = visitor;
        this.store = store;
        this.config = config;
        this.clock = clock;
    }

    /**
     * How a wish to read a site went.
     *
     * @param asked devices that are read now
     * @param silent devices that are not asked, since they are silent, paused, or not watched
     */
    public record Wish(int asked, int silent) {}

    void start(@Observes @Priority(6_000) StartupEvent event) {
        storing = Executors.newFixedThreadPool(STORING_THREADS, task -> {
            Thread thread = new Thread(task, "wiring-store");
            thread.setDaemon(true);
            return thread;
        });
        rounds.onRestart(this::readSoon);
    }

    void stop(@Observes @Priority(90) ShutdownEvent event) {
        synchronized (this) {
            stopped = true;
        }
        storing.shutdown();
    }

    void fleetChanged(@Observes(during = TransactionPhase.AFTER_SUCCESS) FleetChanged event) {
        synchronized (this) {
            listedAt = Long.MIN_VALUE / 2;
        }
    }

    /**
     * Something happened to a device's wiring: it restarted, or a link went up or down. Its states are read at once, all of
     * its wiring in a few seconds, and once more when neighbours had the time to announce themselves; not more often than
     * once a minute however often this is called. Never blocks.
     */
    public synchronized void readSoon(long deviceId) {
        Optional.ofNullable(times.get(deviceId)).ifPresent(of -> of.happened(clock.millis()));
    }

    /** Reads all devices of a site as soon as may be. Callers check the customer scope. */
    public Wish readNow(long siteId) {
        int asked = 0;
        int silent = 0;
        synchronized (this) {
            for (ReadingTimes each : times.values()) {
                if (each.device().siteId() == siteId) {
                    boolean reachable = rounds.reachable(each.device().deviceId());
                    asked += reachable ? 1 : 0;
                    silent += reachable ? 0 : 1;
                    each.wanted(clock.millis());
                }
            }
        }
        go();
        return new Wish(asked, silent);
    }

    @Scheduled(every = "2s", concurrentExecution = Scheduled.ConcurrentExecution.SKIP)
    void tick() {
        if (config.enabled()) {
            try {
                list();
                go();
            } catch (RuntimeException e) {
                LOG.warnf("Wiring is not read for now, since the list of devices could not be: %s", e.getMessage());
            }
        }
    }

    /** Takes up devices that came, and drops those that went. */
    private void list() {
        long now = clock.millis();
        synchronized (this) {
            if (now - listedAt < LIST_KEPT) {
                return;
            }
            listedAt = now;
        }
        List<Watched> watched = store.watched();
        Set<Long> changedSites = new HashSet<>();
        synchronized (this) {
            Map<Long, Watched> wanted = new HashMap<>();
            watched.forEach(device -> wanted.put(device.deviceId(), device));
            times.values().removeIf(each -> {
                Watched device = wanted.get(each.device().deviceId());
                boolean gone = device == null
                        || device.siteId() != each.device().siteId()
                        || device.kind() != each.device().kind();
                if (gone) {
                    changedSites.add(each.device().siteId());
                }
                return gone;
            });
            watched.forEach(
                    device -> times.computeIfAbsent(device.deviceId(), id -> new ReadingTimes(device, config, now)));
        }
        changedSites.forEach(store::workOut);
    }

    /** Begins what is due and may begin. */
    private void go() {
        List<ReadingTimes> due;
        long now = clock.millis();
        synchronized (this) {
            due = times.values().stream()
                    .filter(each -> each.dueAt() <= now)
                    .sorted(Comparator.comparing(ReadingTimes::dueAt)
                            .thenComparing(each -> each.device().deviceId()))
                    .toList();
        }
        due.forEach(each -> begin(each, now));
    }

    private void begin(ReadingTimes each, long now) {
        Watched device = each.device();
        Optional<ReadingTimes.Kind> kind;
        synchronized (this) {
            kind = each.due(now);
            boolean may = !stopped && running < config.atOnce() && !busySites.contains(device.siteId());
            if (!may || kind.isEmpty() || !rounds.reachable(device.deviceId())) {
                return;
            }
            running++;
            busySites.add(device.siteId());
            each.begin(kind.get(), now);
        }
        boolean full = kind.get() == ReadingTimes.Kind.FULL;
        List<TableQuestion> questions = full ? Tables.of(device.kind()) : Tables.states();
        Optional<CompletableFuture<TableReading>> reading =
                rounds.aside(device.deviceId(), memory -> visitor.tables(memory, questions, config.maxRows()));
        if (reading.isEmpty()) {
            release(device);
            return;
        }
        reading.get().whenComplete((answer, fault) -> later(device, () -> ended(each, full, answer, fault)));
    }

    /** Storing waits for the database, which a receiving thread must not. */
    private void later(Watched device, Runnable work) {
        try {
            storing.execute(work);
        } catch (RejectedExecutionException e) {
            LOG.debugf("Stopping; what was read of device %d is dropped", device.deviceId());
            release(device);
        }
    }

    private void ended(ReadingTimes each, boolean full, TableReading answer, Throwable fault) {
        Watched device = each.device();
        try {
            if (fault != null) {
                LOG.debugf("Reading the wiring of device %d broke off: %s", device.deviceId(), fault);
            } else if (full) {
                stored(each, store.full(device.deviceId(), device.siteId(), answer));
            } else {
                store.states(device.deviceId(), answer);
            }
        } catch (RuntimeException e) {
            LOG.warnf("The wiring of device %d could not be stored: %s", device.deviceId(), e.getMessage());
            synchronized (this) {
                each.broke(clock.millis());
            }
        } finally {
            release(device);
        }
        go();
    }

    /** When a device shows addresses that nobody knew, those who may have learnt them are looked at again. */
    private synchronized void stored(ReadingTimes each, WiringStore.Stored stored) {
        long now = clock.millis();
        each.ended(stored.lldp(), now);
        if (stored.freshAddresses()) {
            times.values().stream()
                    .filter(other -> other.device().siteId() == each.device().siteId() && other != each)
                    .filter(other -> other.device().kind() != DeviceKind.ACCESS_POINT)
                    .forEach(other -> other.happened(now));
        }
    }

    private synchronized void release(Watched device) {
        running--;
        busySites.remove(device.siteId());
    }
}
