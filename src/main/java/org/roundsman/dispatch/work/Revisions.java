package org.roundsman.dispatch.work;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.jboss.logging.Logger;
import org.roundsman.dispatch.KeptReport;
import org.roundsman.dispatch.ReportState;
import org.roundsman.dispatch.store.QueueTable;
import org.roundsman.dispatch.store.ShelfTable;
import org.roundsman.reports.Report;

/**
 * Works out once more what was sent, for the same moment, and makes a further revision where later data changed it. When each was
 * checked is kept in the database, so that it does not matter how often the service starts.
 */
public final class Revisions {

    static final String LATER_DATA = "later data";

    /** Each is checked so often. */
    private static final Duration PAUSE = Duration.ofDays(1);

    private static final Logger LOG = Logger.getLogger(Revisions.class);

    private final Parts parts;

    public Revisions(Parts parts) {
        this.parts = parts;
    }

    /**
     * Checks one report that was sent within the days in which later data counts, and neither sent nor checked within the last day;
     * whether there was one. What goes wrong stands in the log and is tried the next day; what was under way when the service ended
     * is checked anew.
     */
    public boolean step() {
        Instant now = parts.now();
        Instant since = now.minus(Duration.ofDays(parts.config().lateDays()));
        Optional<Long> next = new QueueTable(parts.store().rows()).unchecked(since, now.minus(PAUSE));
        next.ifPresent(this::check);
        return next.isPresent();
    }

    private void check(long id) {
        try {
            revise(id).ifPresent(made -> LOG.infof("Later data made report %d a revision of report %d", made, id));
        } catch (RuntimeException | StackOverflowError | OutOfMemoryError e) {
            if (Thread.currentThread().isInterrupted()) {
                throw e; // the service ends: not the report's fault
            }
            LOG.warnf("Report %d was not checked for later data: %s", id, e.getMessage());
        }
        new QueueTable(parts.store().rows()).checked(id, parts.now());
    }

    /**
     * The further revision, to be reviewed; empty where what was observed is the same, or the report is not one that was sent and
     * is the newest.
     */
    public Optional<Long> revise(long id) {
        ShelfTable shelf = new ShelfTable(parts.store().rows());
        KeptReport sent = shelf.find(null, id)
                .filter(one -> one.state() == ReportState.SENT && one.last())
                .orElse(null);
        if (sent == null) {
            return Optional.empty();
        }
        ShelfTable.Figures kept = shelf.figures(id).orElseThrow();
        Report fresh = parts.making().figures(sent.subject(), kept.asOf());
        QueueTable.Built built = parts.built(fresh);
        return built.observed().equals(kept.observed())
                ? Optional.empty()
                : new QueueTable(parts.store().rows()).revise(id, LATER_DATA, built, parts.now());
    }
}
