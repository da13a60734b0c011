package org.roundsman.boot;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CopyOnWriteArrayList;
import javax.sql.DataSource;
import org.jboss.logging.Logger;
import org.roundsman.demo.AgentHost;
import org.roundsman.demo.AgentNotices;
import org.roundsman.demo.DemoFleet;
import org.roundsman.demo.Faults;
import org.roundsman.demo.Programme;
import org.roundsman.demo.SownFleet;

/** The invented fleet inside the service: sown, answering, and with a past. */
@ApplicationScoped
class DemoRun {

    private static final Logger LOG = Logger.getLogger(DemoRun.class);

    private final DemoConfig config;
    private final DemoSowing sowing;
    private final DemoPast past;
    private final DataSource database;
    private final Clock clock;
    /** Of the fleet in the service, and of the customer who is not entered. */
    private final List<Faults> faults = new CopyOnWriteArrayList<>();
    /** What is to be stopped, the last one first. */
    private final Deque<AutoCloseable> running = new ArrayDeque<>();

    @Inject
    DemoRun(DemoConfig config, DemoSowing sowing, DemoPast past, DataSource database, Clock clock) {
        this.config = config;
        this.sowing = sowing;
        this.past = past;
        this.database = database;
        this.clock = clock;
    }

    /** Sows the fleet, starts its agents, and begins to write its past in the background. */
    void start() {
        SownFleet.Choice choice = new SownFleet(database).choose(config.accessPoints(), config.seed());
        DemoFleet fleet = DemoFleet.of(choice.accessPoints(), choice.seed(), config.port());
        LOG.infof(
                "Inventing %d customers, %d sites and %d devices",
                fleet.customers().size(), fleet.sites().size(), fleet.devices().size());
        Map<Integer, Long> ids = sowing.sow(fleet);
        Faults entered = new Faults(fleet, clock);
        if (config.programme()) {
            entered.run(Programme.ofTheHour(fleet, clock.instant()));
        }
        answer(entered);
        if (config.prospect()) {
            answer(Faults.byHandOnly(DemoFleet.prospect(config.port()), clock));
        }
        LOG.infof(
                "%d invented agents answer on loopback, UDP port %d",
                faults.stream().mapToInt(f -> f.fleet().devices().size()).sum(), config.port());
        if (config.history()) {
            past.start(fleet, ids, sowing.firstSown());
        }
    }

    private void answer(Faults some) {
        running.push(AgentHost.start(some.fleet(), some, clock));
        if (!config.notifications().equals("off")) {
            running.push(AgentNotices.start(some, clock, AgentNotices.receiver(config.notifications())));
        }
        faults.add(some);
    }

    /** The faults of each invented fleet; none unless they run. */
    List<Faults> faults() {
        return List.copyOf(faults);
    }

    /** Stops the agents; a past that is not finished goes on at the next start. */
    void stop() {
        past.stop();
        while (!running.isEmpty()) {
            close(running.pop());
        }
    }

    private static void close(AutoCloseable part) {
        try {
            part.close();
        } catch (Exception e) {
            LOG.error("A part of the invented fleet did not stop in good order", e);
        }
    }
}
