package org.roundsman.boot;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.IntSupplier;
import javax.sql.DataSource;
import org.jboss.logging.Logger;
import org.roundsman.demo.DemoFleet;
import org.roundsman.demo.History;
import org.roundsman.demo.HistorySink;
import org.roundsman.demo.HistoryTable;
import org.roundsman.readings.HistoryLoad;

/** Writes the past of the invented fleet: spans and alarms before the first round, readings in the background. */
@ApplicationScoped
class DemoPast {

    private static final Logger LOG = Logger.getLogger(DemoPast.class);

    /**
     * Up to so many devices, their past spans are written before the first round, which then goes on with them. A larger
     * fleet would start late: its first spans begin with the first round.
     */
    private static final int SPANS_BEFORE_ROUNDS = 1_000;

    private final HistoryLoad load;
    private final DemoAlarmsPast alarms;
    private final DataSource database;

    private Thread past;

    @Inject
    DemoPast(HistoryLoad load, DemoAlarmsPast alarms, DataSource database) {
        this.load = load;
        this.alarms = alarms;
        this.database = database;
    }

    void start(DemoFleet fleet, Map<Integer, Long> ids, Instant firstStart) {
        History history = new History(fleet);
        HistorySink sink = sink(ids);
        HistoryTable progress = new HistoryTable(database);
        boolean spansFirst = fleet.devices().size() <= SPANS_BEFORE_ROUNDS;
        if (spansFirst) {
            history.fillSpans(firstStart, sink, progress);
            alarms.fill(fleet, ids, firstStart);
        }
        past = new Thread(
                () -> writePast(() -> {
                    if (!spansFirst) {
                        history.fillSpans(firstStart, sink, progress);
                    }
                    int days = history.fill(firstStart, sink, progress);
                    if (!Thread.currentThread().isInterrupted()) {
                        alarms.suffered(firstStart); // of half a past, wrong numbers would come out, and stay
                    }
                    return days;
                }),
                "demo-past");
        past.setDaemon(true);
        past.start();
    }

    /** What is not finished goes on at the next start. */
    void stop() {
        if (past != null) {
            past.interrupt();
            awaitPast();
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
