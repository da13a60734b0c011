package org.roundsman.web.api;

import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.roundsman.dispatch.KeptReport;

/** A report as it is kept; what it says stands in its figures, its tables and its document. */
@Schema(name = "Report")
record KeptReportJson(
        @Schema(examples = "3107") long id,
        @Schema(examples = "7") long customerId,
        @Schema(examples = "Pebblegate Dental") String customer,

        @Schema(nullable = true, description = "Null where its days are not one calendar month", examples = "2026-10")
        String month,

        @Schema(type = SchemaType.STRING, format = "date", description = "First day", examples = "2026-10-01")
        LocalDate from,

        @Schema(
                type = SchemaType.STRING,
                format = "date",
                description = "Last day; it counts as well",
                examples = "2026-10-31")
        LocalDate last,

        @Schema(description = "1 for the first; a later one replaces those before it", examples = "1")
        int revision,

        @Schema(description = "No later revision is there", examples = "true")
        boolean newest,

        @Schema(description = "waiting, building, to-review, reviewed, sending, sent or failed", examples = "to-review")
        String state,

        @Schema(description = "BCP 47 tag", examples = "en-GB")
        String language,

        @Schema(description = "a4 or letter", examples = "a4")
        String paper,

        @Schema(description = "Whether list prices are shown", examples = "false")
        boolean costs,

        @Schema(description = "Of the account manager, for the customer", examples = "Thank you for a calm month.")
        String remark,

        @Schema(nullable = true, examples = "2026-11-03T06:00:12Z")
        Instant builtAt,

        @Schema(description = "Sign-in name, or empty", examples = "wren")
        String reviewedBy,

        @Schema(nullable = true, examples = "2026-11-03T08:15:00Z")
        Instant reviewedAt,

        @Schema(nullable = true, examples = "2026-11-03T08:20:31Z")
        Instant sentAt,

        @Schema(description = "Why it could not be built or sent, or empty", examples = "")
        String failure,

        @Schema(description = "What a later revision was made for, or empty", examples = "")
        String why,

        @Schema(description = "SHA-256 of the figures in hexadecimal digits; empty before it is built")
        String figuresSha256,

        @Schema(description = "SHA-256 of the PDF in hexadecimal digits; empty before it is settled")
        String pdfSha256,

        @Schema(description = "Octets of the PDF, or 0", examples = "181204")
        long pdfSize,

        Counts mails) {

    /** How many mails of a report are in which state. */
    @Schema(name = "ReportMailCounts")
    record Counts(
            @Schema(examples = "0") int waiting,
            @Schema(examples = "2") int sent,
            @Schema(examples = "0") int failed,
            @Schema(examples = "0") int bounced) {}

    static KeptReportJson of(KeptReport one) {
        KeptReport.Mails mails = one.mails();
        return new KeptReportJson(
                one.id(),
                one.customerId(),
                one.customer(),
                one.month().map(YearMonth::toString).orElse(null),
                one.from(),
                one.to().minusDays(1),
                one.revision(),
                one.last(),
                Choice.word(one.state()),
                one.language().toLanguageTag(),
                Choice.word(one.paper()),
                one.costs(),
                one.remark(),
                one.builtAt().orElse(null),
                one.reviewedBy(),
                one.reviewedAt().orElse(null),
                one.sentAt().orElse(null),
                one.failure(),
                one.why(),
                one.prints().figures(),
                one.prints().pdf(),
                one.prints().pdfSize(),
                new Counts(mails.waiting(), mails.sent(), mails.failed(), mails.bounced()));
    }
}
