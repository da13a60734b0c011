package org.roundsman.fleet;

import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.scheduler.Scheduled;
import jakarta.annotation.PreDestroy;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.inject.Inject;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import javax.sql.DataSource;
import org.jboss.logging.Logger;
import org.roundsman.audit.AuditTrail;
import org.roundsman.fleet.transfer.ImportWork;
import org.roundsman.fleet.transfer.Imports;
import org.roundsman.fleet.transfer.Upload;
import org.roundsman.shared.Page;

/**
 * Brings customers, sites, models, devices and purchases in from CSV: first a dry run that says for each row what it would do, then
 * all of it or nothing. An import belongs to the account that made it and is kept for a day. Its work goes on in the
 * background; {@link ImportRun#working()} tells. Callers are in no transaction. Thread-safe.
 */
@ApplicationScoped
public class FleetImport {

    private static final Logger LOG = Logger.getLogger(FleetImport.class);

    private final AuditTrail audit;
    private final ImportWork work;
    private final Imports imports;

    @Inject
    FleetImport(DataSource source, AuditTrail audit, ObjectMapper json, Clock clock, Event<FleetChanged> changed) {
        this.audit = audit;
        this.work = new ImportWork(source, audit, json, clock, () -> changed.fire(new FleetChanged()));
        this.imports = new Imports(source, json, clock, work);
    }

    @PreDestroy
    void stop() {
        work.close();
    }

    @Scheduled(every = "1h", delayed = "1m")
    void removeOld() {
        int removed = imports.removeOld();
        if (removed > 0) {
            LOG.infof("Removed %d imports that were older than a day", removed);
        }
    }

    /**
     * Reads files and begins their dry run.
     *
     * @param rights what the rows may touch; a row about anything else is refused
     * @param accountId whose import it is
     * @param elseWindows whether files that are not UTF-8 are Windows-1252: for a person to say, never to be guessed
     * @throws ImportUnreadable naming every file that cannot be read as a table
     * @throws InputRejected when another import of the account is still at work
     */
    public ImportRun check(ImportRights rights, long accountId, List<ImportFile> files, boolean elseWindows) {
        return imports.open(rights, accountId, Upload.read(files, elseWindows));
    }

    /**
     * Makes the dry run once more with the rows as uploaded, since the fleet has changed.
     *
     * @throws InputRejected when it is gone (field {@code id}), at work, or applied (field {@code import})
     */
    public ImportRun checkAgain(ImportRights rights, long accountId, long id) {
        return imports.checkAgain(rights, accountId, id);
    }

    /**
     * Begins to write. It ends applied; or checked with a remark and a new dry run when a row would now come out differently
     * than in the dry run that was seen, and then nothing was written.
     *
     * @throws InputRejected when it is gone (field {@code id}), not applicable, or at work (field {@code import})
     */
    public ImportRun apply(ImportRights rights, long accountId, long id) {
        return imports.apply(rights, accountId, id, audit.actor());
    }

    /** Empty when there is none of that account, or no longer. */
    public Optional<ImportRun> find(long accountId, long id) {
        return imports.find(accountId, id);
    }

    /** The account's imports of the last day, the newest first. */
    public List<ImportRun> latest(long accountId) {
        return imports.latest(accountId, 10);
    }

    /**
     * Rows in the order in which they are applied.
     *
     * @param outcome only those, or empty for all
     * @param moved only those that came out differently than in the dry run before
     * @param page from 1
     * @param size the most rows of a page
     * @throws InputRejected when the import is gone (field {@code id})
     */
    public Page<ImportRow> rows(
            long accountId, long id, Optional<ImportOutcome> outcome, boolean moved, int page, int size) {
        return imports.rows(accountId, id, outcome.orElse(null), moved, page, size);
    }

    /**
     * Why rows are refused, the most frequent first, ten at most.
     *
     * @throws InputRejected when the import is gone (field {@code id})
     */
    public List<ImportReason> reasons(long accountId, long id) {
        return imports.reasons(accountId, id);
    }

    /**
     * Forgets an import; what it has written stays.
     *
     * @throws InputRejected when it is gone (field {@code id}) or at work (field {@code import})
     */
    public void discard(long accountId, long id) {
        imports.discard(accountId, id);
    }
}
