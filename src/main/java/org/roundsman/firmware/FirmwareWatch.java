package org.roundsman.firmware;

import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.enterprise.event.TransactionPhase;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import org.jboss.logging.Logger;
import org.roundsman.catalogue.LinesChanged;
import org.roundsman.firmware.upgrade.Comparing;
import org.roundsman.firmware.upgrade.Noticing;
import org.roundsman.firmware.watch.SiteAlarms;
import org.roundsman.fleet.FleetChanged;
import org.roundsman.rules.RulesChanged;

/**
 * Keeps the alarms of withdrawn firmware and the record of changes up to date on a thread of its own: at once after a change
 * of the policy, a line, the fleet or a rule, some seconds after a device said something new, and once a minute in any case,
 * since exceptions end by themselves. Observers here only take a note.
 */
@ApplicationScoped
public class FirmwareWatch {

    private static final Logger LOG = Logger.getLogger(FirmwareWatch.class);
    private static final long WAIT_MILLIS = 5_000;
    private static final Duration ALARMS_EVERY = Duration.ofMinutes(1);
    private static final long STOPPING_MILLIS = 5_000;

    private final SiteAlarms alarms;
    private final Noticing noticing;
    private final Comparing comparing;
    private final FirmwareConfig config;
    private final Clock clock;
    private final AtomicBoolean stale = new AtomicBoolean(true);
    private final BlockingQueue<Boolean> bell = new ArrayBlockingQueue<>(1);
    private Instant judged = Instant.MIN;
    private boolean failing;
    private volatile boolean stopping;
    private Thread thread;

    @Inject
    FirmwareWatch(SiteAlarms alarms, Noticing noticing, Comparing comparing, FirmwareConfig config, Clock clock) {
        this.alarms = alarms;
        this.noticing = noticing;
        this.comparing = comparing;
        this.config = config;
        this.clock = clock;
    }

    void start(@Observes @Priority(7_100) StartupEvent event) {
        if (config.enabled()) {
            thread = new Thread(this::run, "firmware");
            thread.setDaemon(true);
            thread.start();
        }
    }

    void stop(@Observes @Priority(94) ShutdownEvent event) throws InterruptedException {
        stopping = true;
        bell.offer(true);
        if (thread != null) {
            thread.join(STOPPING_MILLIS);
        }
    }

    void changed(@Observes(during = TransactionPhase.AFTER_SUCCESS) FirmwarePolicyChanged event) {
        ring();
    }

    void changed(@Observes(during = TransactionPhase.AFTER_SUCCESS) FleetChanged event) {
        ring();
    }

    void changed(@Observes(during = TransactionPhase.AFTER_SUCCESS) RulesChanged event) {
        ring();
    }

    void changed(@Observes(during = TransactionPhase.AFTER_SUCCESS) LinesChanged event) {
        ring();
    }

    private void ring() {
        stale.set(true);
        bell.offer(true);
    }

    private void run() {
        try {
            while (!stopping) {
                pass();
                bell.poll(WAIT_MILLIS, TimeUnit.MILLISECONDS);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void pass() {
        try {
            Instant now = clock.instant();
            boolean said = noticing.look(now);
            if (stale.getAndSet(false) || said || !now.isBefore(judged.plus(ALARMS_EVERY)) || now.isBefore(judged)) {
                alarms.look(now);
                judged = now;
            }
            comparing.look(now);
            failing = false;
        } catch (RuntimeException e) {
            stale.set(true);
            if (!failing && !stopping) {
                LOG.warn("Firmware could not be looked at; it is tried again in a few seconds", e);
            }
            failing = true;
        }
    }
}
