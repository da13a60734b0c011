package org.roundsman.dispatch.work;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.jboss.logging.Logger;
import org.roundsman.audit.AuditEntry.FieldChange;
import org.roundsman.audit.AuditEntry.Subject;
import org.roundsman.audit.AuditTrail.Note;
import org.roundsman.dispatch.ReportPlan;
import org.roundsman.dispatch.store.BrandTable;
import org.roundsman.dispatch.store.PlanTable;
import org.roundsman.dispatch.store.QueueTable;

/**
 * Removes reports whose days ended longer ago than their customer's plan has them kept, with all their revisions; those without
 * a plan by what holds untouched. None of days of which something waits to be sent that was asked for within the last two months.
 */
public final class Retention {

    private static final Logger LOG = Logger.getLogger(Retention.class);
    private static final int RECENT_MONTHS = 2;

    private final Parts parts;

    public Retention(Parts parts) {
        this.parts = parts;
    }

    /** A customer that reports are kept of. */
    private record Kept(long customerId, String customer) {}

    /** How many reports it removed. */
    public int look() {
        LocalDate today = parts.now().atZone(ZoneOffset.UTC).toLocalDate();
        List<Kept> kept = parts.store()
                .rows()
                .list(
                        "select distinct c.id, c.name from report r join customer c on c.id = r.customer_id order by c.id",
                        row -> new Kept(row.getLong(1), row.getString(2)));
        int removed = 0;
        for (Kept one : kept) {
            removed += tidy(one, today);
        }
        parts.store().whole((rows, connection) -> new BrandTable(rows).removeUnused());
        return removed;
    }

    private int tidy(Kept one, LocalDate today) {
        Instant recent =
                today.minusMonths(RECENT_MONTHS).atStartOfDay(ZoneOffset.UTC).toInstant();
        return parts.store().whole((rows, connection) -> {
            Optional<ReportPlan> plan = new PlanTable(rows).find(one.customerId());
            LocalDate before =
                    today.minusMonths(plan.map(ReportPlan::keepMonths).orElse(Plans.KEEP_MONTHS));
            int removed = new QueueTable(rows).remove(one.customerId(), before, recent);
            if (removed > 0) {
                Subject subject = new Subject("reports", one.customerId(), one.customer(), one.customerId());
                FieldChange what = new FieldChange("reports", removed + " of days before " + before, "");
                parts.audit().note(connection, List.of(new Note("removed", subject, List.of(what))));
                LOG.infof("%d reports of %s were kept long enough and are removed", removed, one.customer());
            }
            return removed;
        });
    }
}
