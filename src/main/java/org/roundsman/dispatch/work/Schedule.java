package org.roundsman.dispatch.work;

import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.ZoneId;
import java.util.List;
import org.roundsman.dispatch.ReportPlan;
import org.roundsman.dispatch.store.PlanTable;
import org.roundsman.dispatch.store.PlanTable.AtWork;
import org.roundsman.dispatch.store.QueueTable;

/** Puts past months into the queue when they are due by their customers' plans, each once, those missed while we were away too. */
public final class Schedule {

    private final Parts parts;

    public Schedule(Parts parts) {
        this.parts = parts;
    }

    /** How many reports it put into the queue. */
    public int look() {
        Instant now = parts.now();
        int queued = 0;
        for (AtWork plan : new PlanTable(parts.store().rows()).atWork()) {
            YearMonth month = plan.next();
            while (ready(plan.plan(), month, now)) {
                queued += queue(plan.plan(), month, now) ? 1 : 0;
                month = month.plusMonths(1);
            }
        }
        return queued;
    }

    private boolean ready(ReportPlan plan, YearMonth month, Instant now) {
        if (Plans.due(plan, month).isAfter(now)) {
            return false;
        }
        LocalDate to = month.plusMonths(1).atDay(1);
        return !Plans.over(to, zones(plan.customerId())).isAfter(now);
    }

    private List<ZoneId> zones(long customerId) {
        return new PlanTable(parts.store().rows()).zones(customerId);
    }

    /** A customer without a site gets none; one that was built by hand already stays. */
    private boolean queue(ReportPlan plan, YearMonth month, Instant now) {
        return parts.store().whole((rows, connection) -> {
            PlanTable plans = new PlanTable(rows);
            return plans.advance(plan.customerId(), month)
                    && !plans.zones(plan.customerId()).isEmpty()
                    && new QueueTable(rows)
                            .add(plan, month.atDay(1), month.plusMonths(1).atDay(1), now)
                            .isPresent();
        });
    }
}
