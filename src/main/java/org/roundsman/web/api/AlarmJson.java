package org.roundsman.web.api;

import java.time.Instant;
import java.util.List;
import java.util.OptionalInt;
import java.util.OptionalLong;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.roundsman.alarms.Impact;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.alarms.Resource;

/** An alarm with one of its episodes. */
@Schema(name = "Alarm")
record AlarmJson(
        @Schema(description = "Stays the same however often it is raised", examples = "88")
        long id,

        @Schema(description = "From one raise to its clear", examples = "1207")
        long episodeId,

        @Schema(examples = "device-silent") String type,
        @Schema(examples = "Does not answer") String title,
        Of resource,

        @Schema(description = "Tells alarms of one type and resource apart; mostly empty", examples = "")
        String qualifier,

        @Schema(nullable = true, examples = "7") Long customerId,
        @Schema(examples = "Pebblegate Dental") String customer,
        @Schema(nullable = true, examples = "21") Long siteId,
        @Schema(examples = "Mill Lane") String site,

        @Schema(
                description = "critical, major, minor, warning or indeterminate; after the clear, the last one",
                examples = "major")
        String severity,

        @Schema(description = "Whether the fault is gone; never said by people (RFC 8632)", examples = "false")
        boolean cleared,

        @Schema(description = "When the fault began", examples = "2026-03-04T09:30:10Z")
        Instant began,

        @Schema(examples = "2026-03-04T09:31:07Z") Instant raised,

        @Schema(description = "Last status change", examples = "2026-03-04T09:31:07Z")
        Instant changed,

        @Schema(nullable = true) Instant clearedAt,

        @Schema(description = "What is seen", examples = "Silent since 09:30:10; three rounds went unanswered.")
        String text,

        Handled operator,
        Why cause,
        Suffering impact,

        @Schema(description = "It lies in planned work", examples = "false")
        boolean planned) {

    /** What it is about. */
    @Schema(name = "AlarmResource")
    record Of(
            @Schema(description = "service, site or device", examples = "device")
            String kind,

            @Schema(description = "0 for the service itself", examples = "417")
            long id,

            @Schema(description = "Part of the device, or empty", examples = "radio 2")
            String part,

            @Schema(examples = "Waiting room, radio 2") String name) {}

    /** What people made of it. */
    @Schema(name = "AlarmOperator")
    record Handled(
            @Schema(description = "none, ack, closed or shelved", examples = "ack")
            String state,

            @Schema(description = "Who set the state, or empty", examples = "wren")
            String by,

            @Schema(nullable = true, description = "End of the shelf")
            Instant until,

            @Schema(description = "Reason of the shelf, or note of the state", examples = "")
            String reason,

            @Schema(description = "Who has it, or empty", examples = "wren")
            String takenBy) {}

    /** What is behind it. */
    @Schema(name = "AlarmCause")
    record Why(
            @Schema(description = "itself where nothing else was found", examples = "uplink-lost")
            String kind,

            @Schema(nullable = true, description = "Id of the alarm that explains this one", examples = "86")
            Long alarmId,

            @Schema(description = "Step by step", examples = "[\"The gateway last answered at 09:30:02.\"]")
            List<String> evidence,

            @Schema(description = "false while it is still being worked out", examples = "true")
            boolean settled,

            @Schema(description = "Active alarms that this one explains", examples = "0")
            int explains) {}

    /** Who suffers: clients that would be there, the median of this hour of the week over four weeks. */
    @Schema(name = "AlarmImpact")
    record Suffering(
            @Schema(nullable = true, examples = "4") Integer staff,
            @Schema(nullable = true, examples = "12") Integer guest,

            @Schema(nullable = true, description = "On other networks, or not known on which", examples = "0")
            Integer other,

            @Schema(description = "Access points", examples = "1")
            int devices,

            @Schema(description = "The site needs its Wi-Fi at this time", examples = "true")
            boolean serviceHours) {

        static Suffering of(Impact impact) {
            return new Suffering(
                    number(impact.staff()),
                    number(impact.guest()),
                    number(impact.other()),
                    impact.devices(),
                    impact.serviceHours());
        }
    }

    static AlarmJson of(OpenAlarm alarm) {
        Resource resource = alarm.key().resource();
        return new AlarmJson(
                alarm.id(),
                alarm.episodeId(),
                alarm.key().type().id(),
                alarm.key().type().title(),
                new Of(Choice.word(resource.kind()), resource.id(), resource.part(), alarm.resourceName()),
                alarm.key().qualifier(),
                number(alarm.customerId()),
                alarm.customer(),
                number(alarm.siteId()),
                alarm.site(),
                Choice.word(alarm.severity()),
                !alarm.active(),
                alarm.began(),
                alarm.raised(),
                alarm.changed(),
                alarm.clearedAt().orElse(null),
                alarm.text(),
                new Handled(
                        Choice.word(alarm.operator()),
                        alarm.operatorBy(),
                        alarm.operatorUntil().orElse(null),
                        alarm.operatorReason(),
                        alarm.takenBy()),
                new Why(
                        Choice.word(alarm.cause()),
                        number(alarm.causedBy()),
                        alarm.evidence(),
                        alarm.settled(),
                        alarm.pointing()),
                Suffering.of(alarm.impact()),
                alarm.planned());
    }

    static Long number(OptionalLong number) {
        return number.isPresent() ? number.getAsLong() : null;
    }

    private static Integer number(OptionalInt number) {
        return number.isPresent() ? number.getAsInt() : null;
    }
}
