package org.roundsman.dispatch.work;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import org.roundsman.audit.AuditEntry.FieldChange;
import org.roundsman.audit.AuditEntry.Subject;
import org.roundsman.audit.AuditTrail;
import org.roundsman.audit.AuditTrail.Note;
import org.roundsman.dispatch.KeptReport;
import org.roundsman.dispatch.ReportsConfig;
import org.roundsman.dispatch.store.QueueTable;
import org.roundsman.dispatch.store.Store;
import org.roundsman.reports.Report;

/** What reports are kept and sent with. */
public record Parts(Store store, Making making, AuditTrail audit, ReportsConfig config, Clock clock) {

    /** As exact as the database keeps it. */
    public Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.MICROS);
    }

    /** A report as it is stored. */
    QueueTable.Built built(Report report) {
        byte[] json = making.json(report);
        return new QueueTable.Built(json, making.sha256(json), making.observed(report));
    }

    /** Notes what somebody did with a report, in the transaction of that connection. */
    public void note(Connection connection, String action, KeptReport report, List<FieldChange> changes)
            throws SQLException {
        audit.note(connection, List.of(new Note(action, subject(report), changes)));
    }

    private static Subject subject(KeptReport report) {
        String days = report.month()
                .map(Object::toString)
                .orElse(report.from() + " to " + report.subject().last());
        String revision = report.revision() == 1 ? "" : ", revision " + report.revision();
        return new Subject("report", report.id(), report.customer() + " " + days + revision, report.customerId());
    }
}
