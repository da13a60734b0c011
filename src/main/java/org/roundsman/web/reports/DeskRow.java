package org.roundsman.web.reports;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.roundsman.dispatch.DeskLine;
import org.roundsman.dispatch.KeptReport;
import org.roundsman.dispatch.ReportState;
import org.roundsman.web.page.Words;

/**
 * A customer on the month's desk.
 *
 * @param report id of the newest revision; 0 without one
 * @param about what is to be known about it: revision, when it was built, reviewed and sent
 * @param failure why it could not be built or sent, or empty
 * @param missing what has to be entered before its reports go out
 * @param undelivered mails that did not arrive
 */
record DeskRow(
        long customerId,
        String customer,
        String sites,
        StateWord state,
        long report,
        String about,
        String failure,
        List<String> missing,
        List<MailLine> undelivered) {

    /** Customers of whom something is missing. */
    static final String MISSING = "missing";

    /** Customers of whom a mail did not arrive. */
    static final String UNDELIVERED = "undelivered";

    static DeskRow of(DeskLine line, List<MailLine> undelivered) {
        return new DeskRow(
                line.customerId(),
                line.customer(),
                Words.many(line.sites(), "site", "sites"),
                StateWord.of(line.report()),
                line.report().map(KeptReport::id).orElse(0L),
                line.report().map(one -> about(one, line)).orElse(""),
                line.report().map(KeptReport::failure).orElse(""),
                missing(line),
                undelivered);
    }

    private static String about(KeptReport report, DeskLine line) {
        List<String> parts = new ArrayList<>();
        if (report.revision() > 1) {
            parts.add("revision " + report.revision());
        }
        Optional<String> latest = report.sentAt()
                .map(at -> "sent " + Periods.moment(at, line.plan().zone()))
                .or(() -> report.reviewedAt()
                        .map(at -> "reviewed by " + report.reviewedBy() + ", "
                                + Periods.moment(at, line.plan().zone())))
                .or(() -> report.builtAt()
                        .map(at -> "built " + Periods.moment(at, line.plan().zone())));
        latest.ifPresent(parts::add);
        return String.join(", ", parts);
    }

    private static List<String> missing(DeskLine line) {
        List<String> missing = new ArrayList<>();
        if (line.plan().recipients().isEmpty()) {
            missing.add("no recipients");
        }
        if (!line.plan().active()) {
            missing.add("no plan: built by hand only");
        }
        return missing;
    }

    /** Whether the filter of that key lets it through; the empty one lets everything. */
    boolean fits(String filter) {
        return switch (filter) {
            case "" -> true;
            case MISSING -> !missing.isEmpty();
            case UNDELIVERED -> !undelivered.isEmpty();
            default -> state.key().equals(filter);
        };
    }

    /** Whether it can be built here; a report that is there is built again on its own page. */
    public boolean builds() {
        return state.equals(StateWord.NONE) || state.equals(StateWord.of(ReportState.FAILED));
    }

    public boolean opens() {
        return report > 0;
    }
}
