package org.roundsman.alarms;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * An alarm as lists show it, with its current or last episode.
 *
 * @param id of the alarm
 * @param episodeId of the episode, from raise to clear
 * @param timeZone of the site; UTC or empty for the service
 * @param resourceName name of the device with its part, or of the site, or empty for the service
 * @param place of the device, or empty
 * @param began when the fault began
 * @param raised when this episode was raised
 * @param changed last status change
 * @param clearedAt end of the episode, empty while active
 * @param text what is seen
 * @param operatorUntil until when it is shelved
 * @param takenBy name of who has it, or empty
 * @param causedBy id of the alarm that explains this one
 * @param evidence step by step
 * @param pointing active alarms that this one explains
 * @param planned it was raised in planned work, which goes on
 * @param settled false while the cause is still being worked out
 */
public record OpenAlarm(
        long id,
        long episodeId,
        AlarmKey key,
        OptionalLong customerId,
        String customer,
        OptionalLong siteId,
        String site,
        String timeZone,
        String resourceName,
        String place,
        Severity severity,
        Instant began,
        Instant raised,
        Instant changed,
        Optional<Instant> clearedAt,
        String text,
        OperatorState operator,
        String operatorBy,
        Optional<Instant> operatorUntil,
        String operatorReason,
        String takenBy,
        CauseKind cause,
        OptionalLong causedBy,
        List<String> evidence,
        Impact impact,
        int pointing,
        boolean planned,
        boolean settled) {

    /** What a customer reads in place of a name. */
    private static final String SOMEBODY = "somebody";

    public OpenAlarm {
        evidence = List.copyOf(evidence);
    }

    public boolean active() {
        return clearedAt.isEmpty();
    }

    /** The site's; UTC for the service itself. */
    public ZoneId zone() {
        return timeZone.isBlank() ? ZoneId.of("UTC") : ZoneId.of(timeZone);
    }

    /** What to do: about the cause where one was found, else about what is seen. */
    public String advice() {
        return cause.advice().isEmpty() ? key.type().advice() : cause.advice();
    }

    /** The same without who of the firm did what and why: what a customer is shown. */
    OpenAlarm withoutNames() {
        return new OpenAlarm(
                id,
                episodeId,
                key,
                customerId,
                customer,
                siteId,
                site,
                timeZone,
                resourceName,
                place,
                severity,
                began,
                raised,
                changed,
                clearedAt,
                text,
                operator,
                "",
                operatorUntil,
                "",
                takenBy.isEmpty() ? "" : SOMEBODY,
                cause,
                causedBy,
                evidence,
                impact,
                pointing,
                planned,
                settled);
    }
}
