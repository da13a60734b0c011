package org.roundsman.boot;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.IntSupplier;
import javax.sql.DataSource;
import org.jboss.logging.Logger;
import org.roundsman.demo.AgentHost;
import org.roundsman.demo.AgentNotices;
import org.roundsman.demo.DemoFleet;
import org.roundsman.demo.Faults;
import org.roundsman.demo.History;
import org.roundsman.demo.HistorySink;
import org.roundsman.demo.HistoryTable;
import org.roundsman.demo.Programme;
import org.roundsman.demo.SownFleet;
import org.roundsman.readings.HistoryLoad;

/** The invented fleet inside the service: sown, answering, and with a past. */
@ApplicationScoped
class DemoRun {

    private static final Logger LOG = Logger.getLogger(DemoRun.class);

    /**
     * Up to so many devices, their past spans are written before the first round, which then goes on with them. A larger
     * fleet would start late: its first spans begin with the first round.
     */
    private static final int SPANS_BEFORE_ROUNDS = 1_000;

    private final DemoConfig config;
    private final DemoSowing sowing;
    private final HistoryLoad load;
    private final DataSource database;
    private final Clock clock;
    /** Of the fleet in the service, and of the customer who is not entered. */
    private final List<Faults> faults = new CopyOnWriteArrayList<>();
    /** What is to be stopped, the last one first. */
    private final Deque<AutoCloseable> running = new ArrayDeque<>();

    private Thread past;

    @Inject
    DemoRun(DemoConfig config, DemoSowing sowing, HistoryLoad load, DataSource database, Clock clock) {
        this.config = config;
        this.sowing = sowing;
        this.load = load;
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
            startPast(fleet, ids);
        }
    }

    private void answer(Faults some) {
        running.push(AgentHost.start(some.fleet(), some, clock));
        if (!config.notifications().equals("off")) {
            running.push(AgentNotices.start(some, clock, AgentNotices.receiver(config.notifications())));
        }
        faults.add(some);
    }

    private void startPast(DemoFleet fleet, Map<Integer, Long> ids) {
        History history = new History(fleet);
        HistorySink sink = sink(ids);
        HistoryTable progress = new HistoryTable(database);
        Instant firstStart = sowing.firstSown();
        boolean spansFirst = fleet.devices().size() <= SPANS_BEFORE_ROUNDS;
        if (spansFirst) {
            history.fillSpans(firstStart, sink, progress);
        }
        past = new Thread(
                () -> writePast(() -> {
                    if (!spansFirst) {
                        history.fillSpans(firstStart, sink, progress);
                    }
                    return history.fill(firstStart, sink, progress);
                }),
                "demo-past");
        past.setDaemon(true);
        past.start();
    }

    /** The faults of each invented fleet; none unless they run. */
    List<Faults> faults() {
        return List.copyOf(faults);
    }

    /** Stops the agents; a past that is not finished goes on at the next start. */
    void stop() {
        if (past != null) {
            past.interrupt();
            awaitPast();
        }
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

    private void awaitPast() {
        try {
            past.join(30_000);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private static void writePast(IntSupplier filling) {
        try {
            int days = filling.getAsInt();
            if (days > 0) {
                LOG.infof("%d days of the invented past are written", days);
            }
        } catch (RuntimeException e) {
            LOG.error("The invented past could not be finished; the next start goes on with it", e);
        }
    }

    /** A device that people have removed has no past any more. */
    private HistorySink sink(Map<Integer, Long> ids) {
        return (quarters, spans) -> load.load(
                quarters.stream()
                        .map(q -> quarter(ids.get(q.device()), q))
                        .filter(Objects::nonNull)
                        .toList(),
                spans.stream()
                        .filter(s -> ids.containsKey(s.device()))
                        .map(s -> new HistoryLoad.PastSpan(ids.get(s.device()), s.from(), s.to(), s.condition()))
                        .toList());
    }

    private static HistoryLoad.DeviceQuarter quarter(Long id, HistorySink.DeviceQuarter quarter) {
        if (id == null) {
            return null;
        }
        List<HistoryLoad.RadioQuarter> radios = quarter.radios().stream()
                .map(r -> new HistoryLoad.RadioQuarter(r.number(), r.mean(), r.max()))
                .toList();
        List<HistoryLoad.NetworkQuarter> networks = quarter.networks().stream()
                .map(n -> new HistoryLoad.NetworkQuarter(n.ssid(), n.mean()))
                .toList();
        return new HistoryLoad.DeviceQuarter(id, quarter.at(), quarter.samples(), quarter.figures(), radios, networks);
    }
}
