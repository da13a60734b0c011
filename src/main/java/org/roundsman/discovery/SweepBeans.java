package org.roundsman.discovery;

import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.enterprise.event.TransactionPhase;
import jakarta.inject.Inject;
import java.io.IOException;
import java.time.Clock;
import org.roundsman.discovery.run.SweepRunner;
import org.roundsman.discovery.store.FindingTable;
import org.roundsman.discovery.store.PlanTable;
import org.roundsman.discovery.store.SweepTable;
import org.roundsman.profiles.ProfilesInUse;
import org.roundsman.snmp.SnmpVisitor;

/**
 * Keeps the sweeps running while the service does. A sweep that ran when the service stopped goes on by itself at the
 * next start: a person asked for it, asks of nobody but the addresses entered, and may be away; cancelling it is one click.
 */
@ApplicationScoped
class SweepBeans {

    private final SnmpVisitor visitor;
    private final SweepRunner runner;

    @Inject
    SweepBeans(Stored stored, SiteKeys keys, DiscoveryConfig config, ProfilesInUse profiles, Clock clock)
            throws IOException {
        visitor = SnmpVisitor.open(config.snmp(), profiles.current(), clock);
        profiles.whenChanged(visitor::use);
        SweepRunner.Bounds bounds =
                new SweepRunner.Bounds(config.requestsPerSecond(), config.inFlight(), config.atOnce());
        runner = new SweepRunner(stored.store(), keys, visitor::visit, bounds, clock);
    }

    /** The three tables together. */
    @ApplicationScoped
    static class Stored {
        private final SweepRunner.Store store;

        @Inject
        Stored(SweepTable sweeps, PlanTable plans, FindingTable findings) {
            store = new SweepRunner.Store(sweeps, plans, findings);
        }

        SweepRunner.Store store() {
            return store;
        }
    }

    boolean hasBegun(long sweepId) {
        return runner.hasBegun(sweepId);
    }

    void start(@Observes @Priority(6_000) StartupEvent event) {
        runner.takeUp();
    }

    void changed(@Observes(during = TransactionPhase.AFTER_SUCCESS) SweepsChanged event) {
        runner.takeUp();
    }

    void stop(@Observes @Priority(90) ShutdownEvent event) {
        runner.close();
        visitor.close();
    }
}
