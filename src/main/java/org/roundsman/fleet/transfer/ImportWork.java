package org.roundsman.fleet.transfer;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.IntConsumer;
import javax.sql.DataSource;
import org.jboss.logging.Logger;
import org.roundsman.audit.Actor;
import org.roundsman.audit.AuditTrail;
import org.roundsman.fleet.ImportRights;
import org.roundsman.fleet.ImportRun.Progress;
import org.roundsman.fleet.ImportRun.State;
import org.roundsman.timeline.DeviceEvents;

/**
 * Makes dry runs and applies them, one import after the other, on a thread of its own: a request does not wait for it.
 * Thread-safe.
 */
public final class ImportWork implements AutoCloseable {

    private static final Logger LOG = Logger.getLogger(ImportWork.class);

    /** A deadlock, a lock not had in time, and a change that another transaction made first. */
    private static final Set<String> IN_THE_WAY = Set.of("40P01", "55P03", "40001");

    /** Nobody else may change these while rows are written, so that what was evaluated is what is written. Reading goes on. */
    private static final String LOCK = "lock table customer, site, device, purchase, credential, model, firmware_line"
            + " in share row exclusive mode";

    private final Map<Long, Progress> progress = new ConcurrentHashMap<>();
    private final ExecutorService thread = Executors.newSingleThreadExecutor(task -> {
        Thread worker = new Thread(task, "imports");
        worker.setDaemon(true);
        return worker;
    });
    private final Database database;
    private final AuditTrail audit;
    private final Rows rows;
    private final Clock clock;
    private final Runnable changed;

    /**
     * @param changed is run once after an import has been written and committed
     */
    public ImportWork(DataSource source, AuditTrail audit, ObjectMapper json, Clock clock, Runnable changed) {
        this.database = new Database(source);
        this.audit = audit;
        this.rows = new Rows(json);
        this.clock = clock;
        this.changed = changed;
    }

    /** How far the work on an import is; empty when nobody works on it. */
    public Optional<Progress> progress(long id) {
        return Optional.ofNullable(progress.get(id));
    }

    /** Announces work before the database says so: what is at work there and not here was cut off. */
    public void announce(long id, String work, int total) {
        progress.put(id, new Progress(work, 0, total));
    }

    /** Makes the dry run of rows that were just read. */
    public void check(long id, ImportRights rights, List<Line> lines) {
        start(id, State.FAILED, connection -> {
            Database.run(connection, "set transaction isolation level repeatable read");
            Evaluation.of(connection, rights, lines, today());
            rows.insert(connection, id, lines, step(id));
            Runs.end(connection, id, State.CHECKED, "", clock.instant(), 0);
            return false;
        });
    }

    /** Makes the dry run again, of the rows that were kept. */
    public void checkAgain(long id, ImportRights rights) {
        start(id, State.CHECKED, connection -> {
            Database.run(connection, "set transaction isolation level repeatable read");
            List<Rows.Kept> kept = rows.load(connection, id);
            Evaluation.of(connection, rights, lines(kept), today());
            int moved = rows.update(connection, id, kept);
            Runs.end(
                    connection,
                    id,
                    State.CHECKED,
                    moved == 0 ? "Nothing came out differently." : "",
                    clock.instant(),
                    moved);
            return false;
        });
    }

    /** Writes all of it, or, when a row would come out differently than in the dry run, nothing. */
    public void apply(long id, ImportRights rights, Actor actor) {
        start(id, State.CHECKED, connection -> audit.as(actor, () -> applied(connection, id, rights)));
    }

    private boolean applied(Connection connection, long id, ImportRights rights) {
        try {
            Database.run(connection, "set local lock_timeout = '20s'");
            Database.run(connection, LOCK);
            List<Rows.Kept> kept = rows.load(connection, id);
            List<Line> lines = lines(kept);
            Evaluation evaluation = Evaluation.of(connection, rights, lines, today());
            if (Rows.differ(kept)) {
                int moved = rows.update(connection, id, kept);
                Runs.end(
                        connection,
                        id,
                        State.CHECKED,
                        "Nothing was written: the fleet has changed since the dry run. This is the new one.",
                        clock.instant(),
                        moved);
                return false;
            }
            new FleetWriter(connection, step(id)).write(evaluation);
            audit.note(connection, Notes.of(id, evaluation, Runs.files(connection, id)));
            DeviceEvents.add(connection, Notes.events(evaluation, clock.instant()));
            Runs.end(connection, id, State.APPLIED, "", clock.instant(), 0);
            return true;
        } catch (SQLException e) {
            throw new Failed(e);
        }
    }

    private LocalDate today() {
        return LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC);
    }

    private static List<Line> lines(List<Rows.Kept> kept) {
        return kept.stream().map(Rows.Kept::line).toList();
    }

    private IntConsumer step(long id) {
        return done -> progress.computeIfPresent(
                id, (key, before) -> new Progress(before.work(), Math.min(done, before.total()), before.total()));
    }

    /** Carries a fault of the database through code that may throw none. */
    private static final class Failed extends RuntimeException {
        private static final long serialVersionUID = 1;

        Failed(SQLException cause) {
            super(cause);
        }
    }

    private void start(long id, State after, Database.Work<Boolean> work) {
        thread.execute(() -> {
            boolean written = false;
            try {
                written = database.transaction(work);
            } catch (SQLException | RuntimeException e) {
                failed(id, after, e);
            } finally {
                progress.remove(id);
            }
            if (written) {
                changed.run();
            }
        });
    }

    private void failed(long id, State after, Exception e) {
        SQLException fault =
                e instanceof SQLException sql ? sql : e.getCause() instanceof SQLException sql ? sql : null;
        String remark;
        if (fault != null && IN_THE_WAY.contains(String.valueOf(fault.getSQLState()))) {
            LOG.infof("Import %d waited in vain for other changes of the fleet: %s", id, fault.getMessage());
            remark = "Nothing was written: somebody else was changing the fleet at the same moment. Try again.";
        } else {
            String number = UUID.randomUUID().toString().substring(0, 8);
            LOG.errorf(e, "Import %d failed (%s)", id, number);
            remark = "Nothing was written: something went wrong on our side. The log of the service tells more under "
                    + number + ".";
        }
        try {
            database.transaction(connection -> {
                Runs.end(connection, id, after, remark, clock.instant(), 0);
                return null;
            });
        } catch (SQLException again) {
            LOG.warnf("The end of import %d could not be noted: %s", id, again.getMessage());
        }
    }

    /** Takes no more work and interrupts what goes on, which is then rolled back. */
    @Override
    public void close() {
        thread.shutdownNow();
    }
}
