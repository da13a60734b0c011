package org.roundsman.dispatch.work;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jboss.logging.Logger;
import org.roundsman.dispatch.KeptReport;
import org.roundsman.dispatch.ReportState;
import org.roundsman.dispatch.store.QueueTable;
import org.roundsman.dispatch.store.ShelfTable;
import org.roundsman.reports.Report;

/** Works out once more what was sent, for the same moment, and makes a further revision where later data changed it. */
public final class Revisions {

    static final String LATER_DATA = "later data";

    private static final Logger LOG = Logger.getLogger(Revisions.class);

    private final Parts parts;

    public Revisions(Parts parts) {
        this.parts = parts;
    }

    /** Reports that were sent within the days in which later data counts, the newest revision of each. */
    public List<Long> late() {
        Instant since = parts.now().minus(Duration.ofDays(parts.config().lateDays()));
        return new QueueTable(parts.store().rows()).sentSince(since);
    }

    /** Looks at one of them; what goes wrong stands in the log and is tried the next time. */
    public void look(long id) {
        try {
            revise(id).ifPresent(made -> LOG.infof("Later data made report %d a revision of report %d", made, id));
        } catch (RuntimeException e) {
            LOG.warnf("Report %d was not looked at for later data: %s", id, e.getMessage());
        }
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
