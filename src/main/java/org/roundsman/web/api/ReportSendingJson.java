package org.roundsman.web.api;

import java.time.Instant;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.roundsman.dispatch.ReportLinks;
import org.roundsman.dispatch.ReportMails;

/** Mails of reports and links to them. */
final class ReportSendingJson {

    private ReportSendingJson() {}

    /** One mail to one recipient. */
    @Schema(name = "ReportMail")
    record Mail(
            @Schema(examples = "812") long id,

            @Schema(examples = "practice@pebblegate.example")
            String to,

            @Schema(description = "waiting, sent, failed or bounced", examples = "sent")
            String state,

            @Schema(examples = "1") int attempts,

            @Schema(nullable = true, examples = "2026-11-03T08:21:00Z")
            Instant nextAt,

            @Schema(nullable = true, examples = "2026-11-03T08:20:31Z")
            Instant sentAt,

            @Schema(description = "What went wrong last, or came back; or empty", examples = "")
            String why) {

        static Mail of(ReportMails.Line line) {
            return new Mail(
                    line.id(),
                    line.to(),
                    Choice.word(line.state()),
                    line.attempts(),
                    line.nextAt().orElse(null),
                    line.sentAt().orElse(null),
                    line.why());
        }
    }

    /** A link that opens a report without a sign-in. */
    @Schema(name = "ReportLink")
    record Link(
            @Schema(examples = "41") long id,
            @Schema(examples = "2026-11-04T09:00:00Z") Instant madeAt,
            @Schema(examples = "wren") String madeBy,
            @Schema(examples = "2026-12-04T09:00:00Z") Instant until,

            @Schema(nullable = true, examples = "2026-11-20T09:00:00Z")
            Instant revokedAt,

            @Schema(description = "How often", examples = "3")
            int opened,

            @Schema(nullable = true, examples = "2026-11-05T07:41:00Z")
            Instant openedAt) {

        static Link of(ReportLinks.Link link) {
            return new Link(
                    link.id(),
                    link.madeAt(),
                    link.madeBy(),
                    link.until(),
                    link.revokedAt().orElse(null),
                    link.opened(),
                    link.openedAt().orElse(null));
        }
    }

    /** A link that was made just now. */
    @Schema(name = "ReportLinkMade")
    record Made(
            @Schema(examples = "41") long id,

            @Schema(description = "Path that opens the report; given out this once", examples = "/report-link/kT3…")
            String path,

            @Schema(examples = "2026-12-04T09:00:00Z") Instant until) {

        static Made of(ReportLinks.Fresh fresh) {
            return new Made(
                    fresh.link().id(),
                    "/report-link/" + fresh.secret(),
                    fresh.link().until());
        }
    }
}
