package org.roundsman.dispatch.work;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jboss.logging.Logger;
import org.roundsman.dispatch.KeptReport;
import org.roundsman.dispatch.store.MailTable;
import org.roundsman.dispatch.store.MailTable.Claimed;
import org.roundsman.dispatch.store.QueueTable;
import org.roundsman.dispatch.store.ShelfTable;
import org.roundsman.mail.Letter;
import org.roundsman.mail.MailFailure;
import org.roundsman.reports.Report;
import org.roundsman.reports.ReportLook;
import org.roundsman.reports.ReportMail;

/**
 * Takes mails that are due out of the outbox of reports and sends them, at least once: a mail is marked as sent after the server
 * took it, so that a crash in between repeats it under the same Message-ID. The first that is taken makes its report one that was
 * sent.
 */
public final class Post {

    /** Longer than any attempt takes; after a crash an attempt counts as under way for so long. */
    static final Duration LEASE = Duration.ofMinutes(5);

    private static final Logger LOG = Logger.getLogger(Post.class);
    private static final String LIST = "reports";
    private static final String PDF = "application/pdf";

    private final Parts parts;
    private final Carrier carrier;
    private final Pauses pauses;

    /** Hands a letter to a mail server. */
    @FunctionalInterface
    public interface Carrier {
        void carry(Letter letter) throws MailFailure;
    }

    public Post(Parts parts, Carrier carrier, Pauses pauses) {
        this.parts = parts;
        this.carrier = carrier;
        this.pauses = pauses;
    }

    /** Makes one attempt at one mail; whether there was one. */
    public boolean step() {
        Instant now = parts.now();
        Optional<Claimed> claimed = new MailTable(parts.store().rows()).claim(now, now.plus(LEASE));
        claimed.ifPresent(this::attempt);
        return claimed.isPresent();
    }

    private void attempt(Claimed mail) {
        try {
            carrier.carry(letter(mail));
        } catch (MailFailure e) {
            failed(mail, e.getMessage(), e.permanent(), e.uncertain());
            return;
        } catch (RuntimeException e) {
            LOG.errorf(e, "Mail %d of report %d could not be sent", mail.id(), mail.reportId());
            failed(mail, "a fault of our own: " + e.getClass().getSimpleName(), false, true);
            return;
        }
        Instant now = parts.now();
        parts.store().whole((rows, connection) -> {
            new MailTable(rows).sent(mail.id(), now);
            return new QueueTable(rows).sent(mail.reportId(), now);
        });
    }

    private Letter letter(Claimed mail) {
        ShelfTable shelf = new ShelfTable(parts.store().rows());
        KeptReport report = shelf.find(null, mail.reportId()).orElseThrow();
        ReportLook look = new Looks(parts.store().rows()).of(report, parts.now());
        Report figures =
                parts.making().read(shelf.figures(mail.reportId()).orElseThrow().json());
        ReportMail words = parts.making().mail(figures, look);
        ShelfTable.Print print = shelf.print(mail.reportId()).orElseThrow();
        return new Letter(
                mail.to(),
                words.subject(),
                words.text(),
                words.html(),
                mail.key().toString(),
                Optional.empty(),
                LIST,
                List.of(new Letter.Attachment(print.fileName(), PDF, print.pdf())));
    }

    private void failed(Claimed mail, String why, boolean permanent, boolean uncertain) {
        Instant next = parts.now().plus(pauses.after(mail.attempts()));
        boolean over = permanent || next.isAfter(mail.giveUp());
        if (over) {
            LOG.warnf(
                    "Mail %d of report %d is given up after %d attempts: %s",
                    mail.id(), mail.reportId(), mail.attempts(), why);
        }
        parts.store().whole((rows, connection) -> {
            MailTable mails = new MailTable(rows);
            if (!over) {
                mails.later(mail.id(), why, next, uncertain);
                return false;
            }
            mails.failed(mail.id(), why, uncertain);
            return !mails.anyLeft(mail.reportId())
                    && new QueueTable(rows).unreached(mail.reportId(), "no recipient could be reached: " + why);
        });
    }
}
