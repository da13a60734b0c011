package org.roundsman.dispatch.work;

import java.time.Instant;
import java.util.Optional;
import org.jboss.logging.Logger;
import org.roundsman.dispatch.KeptReport;
import org.roundsman.dispatch.ReportPlan;
import org.roundsman.dispatch.store.MailTable;
import org.roundsman.dispatch.store.PlanTable;
import org.roundsman.dispatch.store.QueueTable;
import org.roundsman.dispatch.store.QueueTable.Claimed;
import org.roundsman.dispatch.store.ShelfTable;
import org.roundsman.reports.Report;
import org.roundsman.reports.ReportLook;
import org.roundsman.reports.ReportSubject;

/**
 * Builds what waits in the queue and prints what is on its way, one report at a time, without a transaction that is open
 * meanwhile. What it was at when it ended waits again after {@link #restart}.
 */
public final class Builder {

    private static final Logger LOG = Logger.getLogger(Builder.class);
    private static final int LONGEST_WHY = 500;

    private final Parts parts;
    private final DispatchMeters meters;

    public Builder(Parts parts, DispatchMeters meters) {
        this.parts = parts;
        this.meters = meters;
    }

    /** At the start of the service, before the first {@link #step}. */
    public void restart() {
        int again = new QueueTable(parts.store().rows()).restart();
        if (again > 0) {
            LOG.infof("%d reports were being built when the service ended; they are built anew", again);
        }
    }

    /** Prints one or builds one; whether there was one. What fails is marked so and does not keep the others. */
    public boolean step() {
        QueueTable queue = new QueueTable(parts.store().rows());
        Optional<Long> unprinted = queue.unprinted();
        if (unprinted.isPresent()) {
            print(queue, unprinted.get());
            return true;
        }
        Optional<Claimed> claimed = queue.claim(parts.now());
        claimed.ifPresent(attempt -> build(queue, attempt));
        return claimed.isPresent();
    }

    private void build(QueueTable queue, Claimed attempt) {
        QueueTable.Built built;
        try {
            built = meters.timed(() -> parts.built(parts.making().figures(subject(attempt), attempt.asOf())));
        } catch (RuntimeException | StackOverflowError | OutOfMemoryError e) {
            if (Thread.currentThread().isInterrupted()) {
                throw e; // the service ends: not the report's fault
            }
            LOG.errorf(e, "Report %d of %s could not be built", attempt.id(), attempt.customer());
            queue.failed(attempt, why(e));
            return;
        }
        if (queue.built(attempt, built, parts.now())) {
            meters.built();
            sendUnread(attempt);
        }
    }

    private static ReportSubject subject(Claimed attempt) {
        return new ReportSubject(attempt.customerId(), attempt.customer(), attempt.from(), attempt.to());
    }

    /** Where the plan asks for nobody's approval and names recipients. */
    private void sendUnread(Claimed attempt) {
        Optional<ReportPlan> plan = new PlanTable(parts.store().rows()).find(attempt.customerId());
        if (plan.isEmpty() || plan.get().approval() || plan.get().recipients().isEmpty()) {
            return;
        }
        Instant now = parts.now();
        parts.store().whole((rows, connection) -> {
            KeptReport report = new ShelfTable(rows).find(null, attempt.id()).orElseThrow();
            return report.revision() == 1
                    && Way.set(
                            rows,
                            report,
                            plan.get().recipients(),
                            now,
                            now.plus(parts.config().giveUpAfter()));
        });
    }

    private void print(QueueTable queue, long id) {
        ShelfTable shelf = new ShelfTable(parts.store().rows());
        try {
            KeptReport report = shelf.find(null, id).orElseThrow();
            ReportLook look = new Looks(parts.store().rows()).of(report, parts.now());
            Report built = parts.making().read(shelf.figures(id).orElseThrow().json());
            queue.printed(id, printed(look.costs() ? built : built.withoutCosts(), look));
        } catch (RuntimeException | StackOverflowError | OutOfMemoryError e) {
            if (Thread.currentThread().isInterrupted()) {
                throw e;
            }
            LOG.errorf(e, "Report %d could not be printed", id);
            unprintable(id, why(e));
        }
    }

    /** What is kept for good: of prices that are not shown the figures say nothing either. */
    private QueueTable.Printed printed(Report figures, ReportLook look) {
        Making making = parts.making();
        byte[] pdf = making.pdf(figures, look);
        byte[] json = making.json(figures);
        return new QueueTable.Printed(
                pdf, making.sha256(pdf), making.fileName(figures, look), json, making.sha256(json));
    }

    private void unprintable(long id, String why) {
        parts.store().whole((rows, connection) -> {
            new MailTable(rows).failedAll(id, "the report could not be printed");
            return new QueueTable(rows).unreached(id, why);
        });
    }

    private static String why(Throwable e) {
        String message =
                e.getMessage() == null ? "" : ": " + e.getMessage().strip().replaceAll("\\s+", " ");
        String whole = e.getClass().getSimpleName() + message;
        return whole.length() > LONGEST_WHY ? whole.substring(0, LONGEST_WHY) : whole;
    }
}
