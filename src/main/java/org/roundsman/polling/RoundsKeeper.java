package org.roundsman.polling;

import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.enterprise.event.TransactionPhase;
import jakarta.inject.Inject;
import java.util.concurrent.atomic.AtomicBoolean;
import org.jboss.logging.Logger;
import org.roundsman.fleet.FleetChanged;

/** Keeps the rounds in step with the fleet. */
@ApplicationScoped
public class RoundsKeeper {

    private static final Logger LOG = Logger.getLogger(RoundsKeeper.class);

    private final Rounds rounds;
    private final PollTargets targets;
    private final PollingConfig config;
    private final AtomicBoolean stale = new AtomicBoolean();
    private volatile boolean started;

    @Inject
    RoundsKeeper(Rounds rounds, PollTargets targets, PollingConfig config) {
        this.rounds = rounds;
        this.targets = targets;
        this.config = config;
    }

    /** Begins the rounds, unless the settings keep them off. */
    public void start() {
        if (!config.enabled()) {
            LOG.info("Rounds are switched off by roundsman.polling.enabled");
            return;
        }
        started = true;
        stale.set(true);
        refresh();
        LOG.infof("Making the rounds of %d devices", rounds.devices());
    }

    /** Ends the rounds; visits that go on are dropped. */
    public void stop() {
        started = false;
        rounds.close();
    }

    void fleetChanged(@Observes(during = TransactionPhase.AFTER_SUCCESS) FleetChanged event) {
        stale.set(true);
    }

    /** Several changes in a row, as in an import, are taken up together. */
    @Scheduled(every = "1s", concurrentExecution = Scheduled.ConcurrentExecution.SKIP)
    void refresh() {
        if (started && stale.getAndSet(false)) {
            try {
                rounds.watch(targets.watched());
            } catch (RuntimeException e) {
                stale.set(true);
                LOG.warnf(
                        "The list of devices could not be read; rounds go on with the one before: %s", e.getMessage());
            }
        }
    }
}
