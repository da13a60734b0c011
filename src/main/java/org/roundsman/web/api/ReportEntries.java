package org.roundsman.web.api;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.roundsman.reports.ReportLook;

/** What comes in about reports. */
final class ReportEntries {

    private static final int FIRST_YEAR = 1900;
    private static final int LAST_YEAR = 2200;

    private ReportEntries() {}

    /**
     * A month out of a text.
     *
     * @throws ProblemException naming the field when it is none
     */
    static YearMonth month(String field, String text) {
        try {
            YearMonth month = YearMonth.parse(Given.text(text));
            requireYear(field, month.getYear());
            return month;
        } catch (DateTimeException e) {
            throw new ProblemException(Problem.refused(Map.of(field, "a month, such as 2026-10")));
        }
    }

    private static void requireYear(String field, int year) {
        if (year < FIRST_YEAR || year > LAST_YEAR) {
            throw new ProblemException(Problem.refused(Map.of(field, "from " + FIRST_YEAR + " to " + LAST_YEAR)));
        }
    }

    /** Which report is to be built: of a month, or of any days. */
    @Schema(name = "ReportEntry")
    record Build(
            @Schema(examples = "7") Long customerId,

            @Schema(nullable = true, description = "Instead of first and last day", examples = "2026-10")
            String month,

            @Schema(nullable = true, description = "First day", examples = "2026-10-01")
            LocalDate from,

            @Schema(nullable = true, description = "Last day; it counts as well", examples = "2026-10-31")
            LocalDate last)
            implements ApiBody {

        LocalDate first() {
            return Given.text(month).isEmpty()
                    ? from
                    : ReportEntries.month("month", month).atDay(1);
        }

        /** The day after the last one. */
        LocalDate end() {
            return Given.text(month).isEmpty()
                    ? last.plusDays(1)
                    : ReportEntries.month("month", month).plusMonths(1).atDay(1);
        }

        /**
         * @throws ProblemException naming the fields that are missing or do not fit together
         */
        void require() {
            Map<String, String> faults = new LinkedHashMap<>();
            if (customerId == null) {
                faults.put("customerId", "must be given");
            }
            boolean days = from != null || last != null;
            if (Given.text(month).isEmpty() && (from == null || last == null)) {
                faults.put("month", "give a month, or first and last day");
            } else if (!Given.text(month).isEmpty() && days) {
                faults.put("month", "give a month, or first and last day, not both");
            } else if (days && last.isBefore(from)) {
                faults.put("last", "not before the first day");
            }
            if (!faults.isEmpty()) {
                throw new ProblemException(Problem.refused(faults));
            }
            if (days) {
                requireYear("from", from.getYear());
                requireYear("last", last.getYear());
            }
        }
    }

    /** A month of which every customer's report is to be built. */
    @Schema(name = "ReportMonth")
    record Month(@Schema(examples = "2026-10") String month) implements ApiBody {}

    /** What was put into the queue. */
    @Schema(name = "ReportsQueued")
    record Queued(
            @Schema(description = "How many reports", examples = "58")
            int reports) {}

    /** The remark of the account manager; it replaces the one before. */
    @Schema(name = "ReportRemark")
    record Remark(
            @Schema(description = "A blank line parts paragraphs", examples = "Thank you for a calm month.")
            String remark)
            implements ApiBody {}

    /** How a report is to look. */
    @Schema(name = "ReportLookEntry")
    record Look(
            @Schema(description = "BCP 47 tag", examples = "en-GB")
            String language,

            @Schema(description = "a4 or letter", examples = "a4")
            String paper,

            @Schema(description = "Whether list prices are shown", examples = "false")
            Boolean costs)
            implements ApiBody {

        /**
         * The language as one of those.
         *
         * @throws ProblemException naming those that there are
         */
        Locale languageOf(List<Locale> languages) {
            return languages.stream()
                    .filter(one -> one.toLanguageTag().equals(language))
                    .findFirst()
                    .orElseThrow(() -> new ProblemException(Problem.refused(Map.of(
                            "language",
                            "one of: "
                                    + String.join(
                                            ", ",
                                            languages.stream()
                                                    .map(Locale::toLanguageTag)
                                                    .toList())))));
        }

        ReportLook.PaperSize paperSize() {
            ReportLook.PaperSize size = Choice.of(ReportLook.PaperSize.class, Given.text(paper));
            if (size == null) {
                throw new ProblemException(Problem.refused(Map.of("paper", "one of: a4, letter")));
            }
            return size;
        }
    }

    /** To whom a report is sent besides. */
    @Schema(name = "ReportRecipients")
    record Recipients(
            @Schema(examples = "[\"practice@pebblegate.example\"]")
            List<String> recipients) implements ApiBody {}

    /** For how long a link works. */
    @Schema(name = "ReportLinkEntry")
    record LinkEntry(
            @Schema(description = "1 to 90", examples = "30")
            Integer days) implements ApiBody {}

    /** Why a mail came back. */
    @Schema(name = "ReportMailReturn")
    record Bounce(
            @Schema(description = "What its answer says", examples = "Mailbox is full")
            String why) implements ApiBody {}
}
