package org.roundsman.fleet.transfer;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.sql.DataSource;
import org.roundsman.audit.Actor;
import org.roundsman.fleet.ImportOutcome;
import org.roundsman.fleet.ImportReason;
import org.roundsman.fleet.ImportRights;
import org.roundsman.fleet.ImportRow;
import org.roundsman.fleet.ImportRun;
import org.roundsman.fleet.ImportRun.Progress;
import org.roundsman.fleet.ImportRun.State;
import org.roundsman.fleet.InputRejected;
import org.roundsman.shared.Page;

/** The imports of accounts: what is kept of them, and who may go on with which. Thread-safe. */
public final class Imports {

    private static final Duration KEPT = Duration.ofDays(1);
    private static final String CUT_OFF = "The service was stopped while it worked on this. Nothing was written.";

    private final Database database;
    private final Rows rows;
    private final Clock clock;
    private final ImportWork work;

    public Imports(DataSource source, ObjectMapper json, Clock clock, ImportWork work) {
        this.database = new Database(source);
        this.rows = new Rows(json);
        this.clock = clock;
        this.work = work;
    }

    /** Keeps an upload and begins its dry run. */
    public ImportRun open(ImportRights rights, long accountId, Upload upload) {
        boolean busy = latest(accountId, 5).stream().anyMatch(ImportRun::working);
        if (busy) {
            throw rejected("another import of yours is still at work; wait until it has ended");
        }
        long id = database.ask(connection -> {
            long fresh = Runs.open(connection, accountId, clock.instant(), upload.sources());
            work.announce(fresh, "Checking", upload.lines().size());
            return fresh;
        });
        work.check(id, rights, upload.lines());
        return find(accountId, id).orElseThrow();
    }

    public ImportRun checkAgain(ImportRights rights, long accountId, long id) {
        go(accountId, id, State.CHECKING, "Checking");
        work.checkAgain(id, rights);
        return find(accountId, id).orElseThrow();
    }

    public ImportRun apply(ImportRights rights, long accountId, long id, Actor actor) {
        ImportRun run = find(accountId, id).orElseThrow(Imports::gone);
        if (!run.applicable()) {
            throw rejected("there is nothing to apply, or a row is refused; it is all or nothing");
        }
        go(accountId, id, State.APPLYING, "Writing");
        work.apply(id, rights, actor);
        return find(accountId, id).orElseThrow();
    }

    private void go(long accountId, long id, State to, String doing) {
        ImportRun run = find(accountId, id).orElseThrow(Imports::gone);
        int total = to == State.APPLYING ? run.count(ImportOutcome.NEW) + run.count(ImportOutcome.CHANGED) : run.rows();
        if (run.working()) {
            throw rejected("this import is at work already");
        }
        boolean gone = database.ask(connection -> {
            boolean went = Runs.go(connection, accountId, id, State.CHECKED, to);
            if (went) {
                work.announce(id, doing, total);
            }
            return went;
        });
        if (!gone) {
            throw rejected("this import cannot go on: its dry run is not there, or it was applied already");
        }
    }

    public Optional<ImportRun> find(long accountId, long id) {
        return find(accountId, Long.valueOf(id), 1).stream().findFirst();
    }

    public List<ImportRun> latest(long accountId, int most) {
        return find(accountId, null, most);
    }

    private List<ImportRun> find(long accountId, Long id, int most) {
        List<ImportRun> before = database.ask(connection -> Runs.find(connection, accountId, id, most));
        List<ImportRun> cutOff = before.stream()
                .filter(run -> run.working() && work.progress(run.id()).isEmpty())
                .toList();
        List<ImportRun> runs = cutOff.isEmpty() ? before : again(accountId, id, most);
        return runs.stream().map(this::withProgress).toList();
    }

    /** Work that ended while we looked has its end in the database by now; what has none was cut off by a stop. */
    private List<ImportRun> again(long accountId, Long id, int most) {
        return database.ask(connection -> {
            for (ImportRun run : Runs.find(connection, accountId, id, most)) {
                if (run.working() && work.progress(run.id()).isEmpty()) {
                    State state = run.rows() == 0 ? State.FAILED : State.CHECKED;
                    Runs.end(connection, run.id(), state, CUT_OFF, clock.instant(), 0);
                }
            }
            return Runs.find(connection, accountId, id, most);
        });
    }

    private ImportRun withProgress(ImportRun run) {
        Progress progress = work.progress(run.id()).orElse(run.progress());
        return new ImportRun(
                run.id(),
                run.startedAt(),
                run.finishedAt(),
                run.state(),
                run.remark(),
                run.files(),
                run.counts(),
                run.moved(),
                progress);
    }

    /**
     * Rows of an import, in the order in which they are applied.
     *
     * @param outcome null for every outcome
     */
    public Page<ImportRow> rows(long accountId, long id, ImportOutcome outcome, boolean moved, int page, int size) {
        find(accountId, id).orElseThrow(Imports::gone);
        return database.ask(connection -> rows.page(connection, id, new Rows.Choice(outcome, moved), page, size));
    }

    public List<ImportReason> reasons(long accountId, long id) {
        find(accountId, id).orElseThrow(Imports::gone);
        return database.ask(connection -> Rows.reasons(connection, id));
    }

    public void discard(long accountId, long id) {
        if (!database.ask(connection -> Runs.remove(connection, accountId, id))) {
            throw find(accountId, id).isPresent()
                    ? rejected("this import is at work; wait until it has ended")
                    : gone();
        }
    }

    /** Removes what is older than a day. */
    public int removeOld() {
        return database.ask(
                connection -> Runs.removeOlder(connection, clock.instant().minus(KEPT)));
    }

    private static InputRejected rejected(String reason) {
        return new InputRejected(Map.of("import", reason));
    }

    private static InputRejected gone() {
        return new InputRejected(Map.of("id", "this import is not there any more; they are kept for a day"));
    }
}
