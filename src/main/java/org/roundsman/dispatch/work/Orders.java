package org.roundsman.dispatch.work;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.LongFunction;
import org.roundsman.dispatch.DeskRejected;
import org.roundsman.dispatch.KeptReport;
import org.roundsman.dispatch.ReportPlan;
import org.roundsman.dispatch.ReportState;
import org.roundsman.dispatch.store.PlanTable;
import org.roundsman.dispatch.store.PlanTable.Sited;
import org.roundsman.dispatch.store.QueueTable;
import org.roundsman.dispatch.store.ShelfTable;
import org.roundsman.system.Rows;

/** Puts reports into the queue because somebody wants them. */
public final class Orders {

    private static final String ACTION = "had built";
    private static final int MOST_DAYS = 366;

    private final Parts parts;
    private final LongFunction<ReportPlan> plans;

    public Orders(Parts parts, LongFunction<ReportPlan> plans) {
        this.parts = parts;
        this.plans = plans;
    }

    /** See {@link org.roundsman.dispatch.MonthDesk#buildAll}. */
    public int all(YearMonth month) {
        LocalDate from = month.atDay(1);
        LocalDate to = month.plusMonths(1).atDay(1);
        PlanTable table = new PlanTable(parts.store().rows());
        List<ReportPlan> over = new ArrayList<>();
        for (Sited one : table.sited()) {
            if (over(to, table.zones(one.customerId()))) {
                over.add(plans.apply(one.customerId()));
            }
        }
        if (over.isEmpty()) {
            throw new DeskRejected("There is no customer for whose sites this month is over.");
        }
        Instant now = parts.now();
        return parts.store().whole((rows, connection) -> {
            int queued = 0;
            for (ReportPlan plan : over) {
                queued += missing(rows, connection, plan, from, to, now) ? 1 : 0;
            }
            return queued;
        });
    }

    private boolean missing(
            Rows rows, Connection connection, ReportPlan plan, LocalDate from, LocalDate to, Instant now)
            throws SQLException {
        QueueTable queue = new QueueTable(rows);
        Optional<KeptReport> newest = newest(rows, plan.customerId(), from, to);
        Optional<Long> id = newest.isEmpty()
                ? queue.add(plan, from, to, now)
                : newest.filter(one -> one.state() == ReportState.FAILED
                                && one.prints().pdf().isEmpty())
                        .map(KeptReport::id)
                        .filter(failed -> queue.again(failed, now));
        if (id.isPresent()) {
            note(rows, connection, id.get());
        }
        return id.isPresent();
    }

    /** See {@link org.roundsman.dispatch.MonthDesk#build}. */
    public long one(long customerId, LocalDate from, LocalDate to) {
        if (!from.isBefore(to) || from.plusDays(MOST_DAYS).isBefore(to)) {
            throw new DeskRejected("A report is of one day at least and of " + MOST_DAYS + " at most.");
        }
        List<ZoneId> zones = new PlanTable(parts.store().rows()).zones(customerId);
        if (zones.isEmpty()) {
            throw new DeskRejected("This customer is not there any more, or has no site.");
        }
        if (!over(to, zones)) {
            throw new DeskRejected(
                    "These days are not over at every site of the customer, with an hour for late readings.");
        }
        Optional<KeptReport> sent =
                newest(parts.store().rows(), customerId, from, to).filter(report -> report.state() == ReportState.SENT);
        return sent.isPresent() ? revise(sent.get()) : queue(plans.apply(customerId), from, to);
    }

    private long revise(KeptReport sent) {
        long made = new Revisions(parts)
                .revise(sent.id())
                .orElseThrow(
                        () -> new DeskRejected(
                                "What was sent still holds: the data of these days is the same. No further revision was made."));
        parts.store().whole((rows, connection) -> {
            note(rows, connection, made);
            return null;
        });
        return made;
    }

    private long queue(ReportPlan plan, LocalDate from, LocalDate to) {
        Instant now = parts.now();
        return parts.store().whole((rows, connection) -> {
            QueueTable queue = new QueueTable(rows);
            Optional<KeptReport> newest = newest(rows, plan.customerId(), from, to);
            Optional<Long> id = newest.isEmpty()
                    ? queue.add(plan, from, to, now)
                    : newest.map(KeptReport::id).filter(one -> queue.again(one, now));
            long queued = id.orElseThrow(() -> new DeskRejected("This report is being built or sent just now."));
            note(rows, connection, queued);
            return queued;
        });
    }

    private void note(Rows rows, Connection connection, long id) throws SQLException {
        parts.note(connection, ACTION, new ShelfTable(rows).find(null, id).orElseThrow(), List.of());
    }

    private boolean over(LocalDate to, List<ZoneId> zones) {
        return !Plans.over(to, zones).isAfter(parts.now());
    }

    private static Optional<KeptReport> newest(Rows rows, long customerId, LocalDate from, LocalDate to) {
        return new ShelfTable(rows)
                .revisions(null, customerId, from, to).stream().findFirst();
    }
}
