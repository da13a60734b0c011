package org.roundsman.dispatch;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.roundsman.audit.AuditEntry.FieldChange;
import org.roundsman.dispatch.store.MailTable;
import org.roundsman.dispatch.store.ShelfTable;
import org.roundsman.dispatch.work.Parts;

/** The mails of reports. Blocks on the database. */
@ApplicationScoped
public class ReportMails {

    private static final int LONGEST_WHY = 500;

    private final Parts parts;

    @Inject
    ReportMails(Parts parts) {
        this.parts = parts;
    }

    /** How far a mail is. The name is what tables store. */
    public enum State {
        WAITING("waiting"),
        /** A mail server took it. */
        SENT("sent"),
        /** It was refused, or given up. */
        FAILED("failed"),
        /** It went out and came back. */
        BOUNCED("came back");

        private final String word;

        State(String word) {
            this.word = word;
        }

        /** The word on pages and in the API. */
        public String word() {
            return word;
        }
    }

    /**
     * One mail.
     *
     * @param nextAt when it is tried next, while it waits
     * @param why what went wrong last, or came back; or empty
     */
    public record Line(
            long id,
            String to,
            State state,
            int attempts,
            Optional<Instant> nextAt,
            Optional<Instant> sentAt,
            String why) {}

    /** Those of a report, in the order in which they were made. */
    public List<Line> of(long reportId) {
        return new MailTable(parts.store().rows()).of(reportId);
    }

    /**
     * Notes that a mail came back.
     *
     * @throws DeskRejected when it had not gone out, or no reason is given
     */
    public void bounced(long id, String why) {
        String reason = why == null ? "" : why.strip();
        if (reason.isEmpty() || reason.length() > LONGEST_WHY) {
            throw new DeskRejected("Say in at most " + LONGEST_WHY + " characters why it came back.");
        }
        parts.store().whole((rows, connection) -> {
            MailTable table = new MailTable(rows);
            if (!table.bounced(id, reason)) {
                throw new DeskRejected("Only a mail that went out can come back.");
            }
            Line line = table.find(id).orElseThrow();
            parts.note(
                    connection,
                    "noted a mail that came back of",
                    new ShelfTable(rows)
                            .find(null, table.report(id).orElseThrow())
                            .orElseThrow(),
                    List.of(new FieldChange("mail to " + line.to(), "sent", "came back: " + reason)));
            return null;
        });
    }
}
