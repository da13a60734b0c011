package org.roundsman.dispatch;

import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Locale;
import java.util.Optional;
import org.roundsman.reports.ReportLook;
import org.roundsman.reports.ReportSubject;

/**
 * A report as it is kept, without what it says.
 *
 * @param customer name as it is today
 * @param from first day
 * @param to the day after the last one
 * @param revision 1 for the first; a later one replaces those before it
 * @param costs whether list prices are shown
 * @param remark of the account manager, or empty
 * @param reviewedBy sign-in name of whoever found it good, or empty
 * @param failure why it could not be built or sent, or empty
 * @param why what a later revision was made for, or empty
 * @param last no later revision is there
 */
public record KeptReport(
        long id,
        long customerId,
        String customer,
        LocalDate from,
        LocalDate to,
        int revision,
        ReportState state,
        Locale language,
        ReportLook.PaperSize paper,
        boolean costs,
        String remark,
        Optional<Instant> builtAt,
        String reviewedBy,
        Optional<Instant> reviewedAt,
        Optional<Instant> sentAt,
        String failure,
        String why,
        Prints prints,
        Mails mails,
        boolean last) {

    /**
     * What proves that a document is the one that was sent.
     *
     * @param figures SHA-256 of the figures in hexadecimal digits, or empty
     * @param pdf SHA-256 of the PDF, or empty before it is settled
     * @param pdfSize in octets, or 0
     */
    public record Prints(String figures, String pdf, long pdfSize) {}

    /** How many mails of it are in which state. */
    public record Mails(int waiting, int sent, int failed, int bounced) {}

    public ReportSubject subject() {
        return new ReportSubject(customerId, customer, from, to);
    }

    /** The month, where it is exactly one. */
    public Optional<YearMonth> month() {
        return subject().month();
    }

    /** Whether there are figures to show. */
    public boolean built() {
        return !prints.figures().isEmpty();
    }

    /** Without what only the firm's own people see. */
    KeptReport forCustomer() {
        return new KeptReport(
                id,
                customerId,
                customer,
                from,
                to,
                revision,
                state,
                language,
                paper,
                costs,
                remark,
                builtAt,
                "",
                Optional.empty(),
                sentAt,
                "",
                why,
                prints,
                mails,
                last);
    }
}
