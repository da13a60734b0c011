package org.roundsman.snmp;

import java.io.IOException;
import java.time.Clock;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.IntPredicate;
import org.roundsman.snmp.decode.RawAnswers;
import org.roundsman.snmp.plan.DeviceRecord;
import org.roundsman.snmp.plan.Standard;
import org.roundsman.snmp.plan.TableVisit;
import org.roundsman.snmp.plan.VisitRun;
import org.roundsman.snmp.session.Session;
import org.roundsman.snmp.walk.WalkFetch;

/** Visits SNMP agents. Thread-safe; owns the sockets. */
public final class SnmpVisitor implements AutoCloseable {

    private final Session session;
    private final SnmpSettings settings;
    private final Clock clock;
    private volatile VisitRun.Setting setting;
    private final Set<CompletableFuture<?>> open = ConcurrentHashMap.newKeySet();

    private SnmpVisitor(Session session, SnmpSettings settings, ProfileSet profiles, Clock clock) {
        this.session = session;
        this.settings = settings;
        this.clock = clock;
        use(profiles);
    }

    /**
     * Opens the sockets.
     *
     * @throws IOException when no UDP socket can be opened
     */
    public static SnmpVisitor open(SnmpSettings settings, ProfileSet profiles, Clock clock) throws IOException {
        Session session = Session.open(settings.sockets(), settings.timeout(), settings.retries());
        return new SnmpVisitor(session, settings, profiles, clock);
    }

    /**
     * Uses other profiles from the next visit on. Visits under way end with those before; each device is surveyed again
     * at its next visit.
     */
    public final void use(ProfileSet profiles) {
        RawAnswers names = new RawAnswers(profiles.all(), Standard.names());
        setting = new VisitRun.Setting(session, settings, profiles.all(), names, clock);
    }

    /**
     * Reads everything that an agent has, one request after the other and with a pause between, so that it is no burden.
     *
     * @param progress hears how many variables there are so far, on a thread of this visitor; answers whether to go on
     */
    public CompletableFuture<FetchedWalk> walk(Agent agent, WalkBounds bounds, IntPredicate progress) {
        CompletableFuture<FetchedWalk> future = new CompletableFuture<>();
        open.add(future);
        future.whenComplete((walk, fault) -> open.remove(future));
        WalkFetch.start(session, session.peer(agent), bounds, clock, new WalkFetch.Ends(progress, future));
        return future;
    }

    /**
     * Visits one agent. The future completes on a receiving thread, always normally: silence and refusal are outcomes.
     * Only when this visitor is closed first, it is cancelled.
     *
     * @param memory not in use by another visit
     */
    public CompletableFuture<Visit> visit(DeviceMemory memory, VisitKind kind) {
        CompletableFuture<Visit> future = new CompletableFuture<>();
        open.add(future);
        future.whenComplete((visit, fault) -> open.remove(future));
        DeviceRecord record = memory.record(session, () -> new DeviceRecord(session.peer(memory.agent())));
        VisitRun.start(setting, record, kind, future);
        return future;
    }

    /**
     * Reads some columns of tables. The future completes on a receiving thread, always normally: silence and refusal are
     * outcomes. Only when this visitor is closed first, it is cancelled.
     *
     * @param memory not in use by a visit or another reading
     * @param maxRows rows of one table after which reading it stops with a remark
     */
    public CompletableFuture<TableReading> tables(DeviceMemory memory, List<TableQuestion> questions, int maxRows) {
        CompletableFuture<TableReading> future = new CompletableFuture<>();
        open.add(future);
        future.whenComplete((reading, fault) -> open.remove(future));
        DeviceRecord record = memory.record(session, () -> new DeviceRecord(session.peer(memory.agent())));
        TableVisit.start(setting, record, List.copyOf(questions), maxRows, future);
        return future;
    }

    /** Closes the sockets; visits under way are cancelled. */
    @Override
    public void close() {
        // First of all: what ends because the sockets close must not look like silence.
        open.forEach(future -> future.cancel(false));
        try {
            session.close();
        } catch (IOException e) {
            System.getLogger(SnmpVisitor.class.getName())
                    .log(System.Logger.Level.WARNING, "A socket could not be closed: {0}", e.getMessage());
        }
    }
}
