package org.roundsman.warranty;

import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.enterprise.event.TransactionPhase;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.concurrent.atomic.AtomicBoolean;
import org.jboss.logging.Logger;
import org.roundsman.fleet.FleetChanged;
import org.roundsman.rules.RulesChanged;

/**
 * Has the alarms of warranties looked at some seconds after something was changed, and every quarter of an hour, since days
 * pass and serial numbers are read without anybody saying so. Ends the calendar addresses of those who lost the right to them.
 */
@ApplicationScoped
class CoverWatch {

    private static final Logger LOG = Logger.getLogger(CoverWatch.class);
    private static final Duration AT_LEAST = Duration.ofMinutes(15);

    private final CoverAlarms alarms;
    private final CalendarAddresses addresses;
    private final WarrantyConfig config;
    private final Clock clock;
    private final AtomicBoolean changed = new AtomicBoolean(true);
    private volatile Instant last = Instant.EPOCH;

    @Inject
    CoverWatch(CoverAlarms alarms, CalendarAddresses addresses, WarrantyConfig config, Clock clock) {
        this.alarms = alarms;
        this.addresses = addresses;
        this.config = config;
        this.clock = clock;
    }

    void changed(@Observes(during = TransactionPhase.AFTER_SUCCESS) CoverChanged event) {
        changed.set(true);
    }

    void changed(@Observes(during = TransactionPhase.AFTER_SUCCESS) FleetChanged event) {
        changed.set(true);
    }

    void changed(@Observes(during = TransactionPhase.AFTER_SUCCESS) RulesChanged event) {
        changed.set(true);
    }

    @Scheduled(every = "15s", delayed = "40s", concurrentExecution = Scheduled.ConcurrentExecution.SKIP)
    void check() {
        Instant now = clock.instant();
        boolean due = changed.getAndSet(false) || !now.isBefore(last.plus(AT_LEAST));
        if (!config.alarms() || !due) {
            return;
        }
        try {
            alarms.look();
            last = now;
        } catch (IllegalStateException e) {
            changed.set(true);
            LOG.warnf("Warranties that end soon were not looked at: %s", e.getMessage());
        }
    }

    @Scheduled(every = "60s", delayed = "50s", concurrentExecution = Scheduled.ConcurrentExecution.SKIP)
    void endAddresses() {
        try {
            addresses.endOfLostRights();
        } catch (IllegalStateException e) {
            LOG.warnf("Calendar addresses of disabled accounts were not ended: %s", e.getMessage());
        }
    }
}
