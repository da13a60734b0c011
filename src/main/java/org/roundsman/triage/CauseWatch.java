package org.roundsman.triage;

import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.enterprise.event.TransactionPhase;
import jakarta.inject.Inject;
import java.util.HashSet;
import java.util.Set;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import org.jboss.logging.Logger;
import org.roundsman.alarms.AlarmsChanged;
import org.roundsman.fleet.FleetChanged;
import org.roundsman.readings.ReadingsStored;
import org.roundsman.rules.RulesChanged;
import org.roundsman.triage.watch.Watch;

/**
 * Runs the watch over all devices on a thread of its own: soon after readings were stored, and at least every two seconds.
 * Observers here only take a note.
 */
@ApplicationScoped
public class CauseWatch {

    private static final Logger LOG = Logger.getLogger(CauseWatch.class);

    /** Readings come all the time: between two passes there is always so much rest. */
    private static final long REST_MILLIS = 500;

    private static final long LONGEST_MILLIS = 1_500;
    private static final long STOPPING_MILLIS = 5_000;

    private final Watch watch;
    private final TriageConfig config;
    private final Set<Long> touched = ConcurrentHashMap.newKeySet();
    private final AtomicBoolean alarms = new AtomicBoolean();
    private final AtomicBoolean everything = new AtomicBoolean();
    private final BlockingQueue<Boolean> bell = new ArrayBlockingQueue<>(1);
    private final CountDownLatch stopped = new CountDownLatch(1);
    private Thread thread;

    @Inject
    CauseWatch(Watch watch, TriageConfig config) {
        this.watch = watch;
        this.config = config;
    }

    void start(@Observes @Priority(7_000) StartupEvent event) {
        if (config.enabled()) {
            thread = new Thread(this::run, "causes");
            thread.setDaemon(true);
            thread.start();
        }
    }

    void stop(@Observes @Priority(95) ShutdownEvent event) throws InterruptedException {
        stopped.countDown();
        bell.offer(true);
        if (thread != null) {
            thread.join(STOPPING_MILLIS);
        }
    }

    void stored(@Observes ReadingsStored event) {
        event.readings().forEach(reading -> touched.add(reading.deviceId()));
        bell.offer(true);
    }

    void changed(@Observes AlarmsChanged event) {
        alarms.set(true);
    }

    void changed(@Observes(during = TransactionPhase.AFTER_SUCCESS) FleetChanged event) {
        everything.set(true);
        bell.offer(true);
    }

    void changed(@Observes(during = TransactionPhase.AFTER_SUCCESS) RulesChanged event) {
        everything.set(true);
    }

    private void run() {
        try {
            while (!stopped.await(REST_MILLIS, TimeUnit.MILLISECONDS)) {
                bell.poll(LONGEST_MILLIS, TimeUnit.MILLISECONDS);
                pass();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void pass() {
        Set<Long> now = new HashSet<>(touched);
        touched.removeAll(now);
        if (everything.getAndSet(false)) {
            watch.forget();
        }
        try {
            watch.pass(now, alarms.getAndSet(false));
        } catch (RuntimeException e) {
            if (stopped.getCount() > 0) {
                LOG.warnf(e, "Causes could not be worked out; all is read again in a moment");
            }
            watch.forget();
        }
    }
}
