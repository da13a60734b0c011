package org.roundsman.web.api;

import java.time.Instant;
import java.time.ZoneId;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.roundsman.alarms.Severity;
import org.roundsman.notices.Digest;
import org.roundsman.notices.NoticeChoices;
import org.roundsman.notices.NoticeEvent;
import org.roundsman.notices.NoticeRejected;
import org.roundsman.notices.OutboxLine;

/** Notices as the API shows them. */
final class NoticeJson {

    private NoticeJson() {}

    /** What a person chose to be told. */
    @Schema(name = "NoticeChoices")
    record Choices(
            @Schema(description = "Whether mails go to the person", examples = "true")
            Boolean mail,

            @Schema(examples = "wren@fernhollow.example", maxLength = 254)
            String mailAddress,

            @Schema(description = "From this one: indeterminate, warning, minor, major or critical", examples = "major")
            String severity,

            @Schema(description = "Of raise, clear and escalation", examples = "[\"raise\", \"clear\"]")
            List<String> events,

            @Schema(
                    nullable = true,
                    description = "Ids of customers; null for all, and Roundsman itself",
                    examples = "[7]")
            List<Long> customers,

            @Schema(description = "Whose clock hours and digest follow", examples = "Europe/Berlin")
            String timeZone,

            @Schema(description = "One stretch a line; empty for around the clock", examples = "Mon-Fri 08:00-18:00")
            String hours,

            @Schema(description = "none, daily or weekly", examples = "daily")
            String digest,

            @Schema(description = "0 to 23", examples = "7") Integer digestHour,

            @Schema(description = "Of a weekly one: 1 = Monday to 7 = Sunday", examples = "1")
            Integer digestWeekday)
            implements ApiBody {

        static Choices of(NoticeChoices of) {
            return new Choices(
                    of.mail(),
                    of.mailAddress(),
                    of.severity().word(),
                    of.events().stream().sorted().map(NoticeEvent::word).toList(),
                    of.everyCustomer() ? null : of.customers().stream().sorted().toList(),
                    of.zone().getId(),
                    of.hours(),
                    of.digest().word(),
                    of.digestHour(),
                    of.digestWeekday());
        }

        /**
         * @throws NoticeRejected naming each field that cannot be read
         */
        NoticeChoices choices() {
            Map<String, String> faults = new LinkedHashMap<>();
            Severity from = Choice.of(Severity.class, severity);
            refuse(faults, "severity", from != null, "indeterminate, warning, minor, major or critical");
            Set<NoticeEvent> chosen = EnumSet.noneOf(NoticeEvent.class);
            for (String word : Given.list(events)) {
                refuse(faults, "events", NoticeEvent.of(word).isPresent(), "of raise, clear and escalation");
                NoticeEvent.of(word).ifPresent(chosen::add);
            }
            boolean zoned = ZoneId.getAvailableZoneIds().contains(Given.text(timeZone));
            refuse(faults, "timeZone", zoned, "no time zone of that name; use one like Europe/Berlin");
            refuse(faults, "digest", Digest.of(Given.text(digest)).isPresent(), "none, daily or weekly");
            if (!faults.isEmpty()) {
                throw new NoticeRejected(faults);
            }
            return new NoticeChoices(
                    Given.or(mail, false),
                    Given.text(mailAddress),
                    from,
                    chosen,
                    customers == null,
                    new HashSet<>(Given.list(customers)),
                    ZoneId.of(timeZone),
                    Given.text(hours),
                    Digest.of(digest).orElseThrow(),
                    Given.or(digestHour, -1),
                    Given.or(digestWeekday, -1));
        }

        private static void refuse(Map<String, String> faults, String field, boolean holds, String fault) {
            if (!holds) {
                faults.putIfAbsent(field, fault);
            }
        }
    }

    /** A message to a person. */
    @Schema(name = "Message")
    record Message(
            @Schema(examples = "812") long id,

            @Schema(description = "Sign-in name of whom it is for", examples = "wren")
            String person,

            @Schema(description = "raise, update, escalation, clear, summary, digest or test", examples = "raise")
            String event,

            @Schema(description = "mail, or webhook with its name", examples = "mail")
            String channel,

            @Schema(examples = "Site cannot be reached at Pier North (Saltmarsh Ferry Line): uplink or gateway lost")
            String subject,

            @Schema(
                    description = "waiting, sent, summed (stands in a summary), dead (given up) or dismissed",
                    examples = "sent")
            String state,

            @Schema(examples = "2026-03-04T12:00:00Z") Instant createdAt,

            @Schema(description = "When the next attempt is due, while it waits", examples = "2026-03-04T12:00:00Z")
            Instant dueAt,

            @Schema(examples = "1") int attempts,

            @Schema(nullable = true, examples = "2026-03-04T12:00:02Z")
            Instant sentAt,

            @Schema(description = "How the last attempt failed, or empty", examples = "")
            String failure) {

        static Message of(OutboxLine line) {
            return new Message(
                    line.id(),
                    line.person(),
                    line.kind(),
                    line.channel(),
                    line.subject(),
                    Choice.word(line.state()),
                    line.createdAt(),
                    line.dueAt(),
                    line.attempts(),
                    line.sentAt().orElse(null),
                    line.failure());
        }
    }
}
