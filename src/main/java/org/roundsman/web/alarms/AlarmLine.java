package org.roundsman.web.alarms;

import java.time.Instant;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.web.page.Words;
import org.roundsman.web.triage.WhoSuffers;

/**
 * One alarm, or one of its episodes, in a list.
 *
 * @param site name with the customer's
 * @param since when it was raised, in the site's time
 * @param at the same for machines
 * @param began since when the fault is, in the site's time; with the day where that is not the day of the raise
 * @param lasted how long the fault lasted, or has lasted
 * @param standing what people have made of it
 * @param cause what is behind it, or empty
 * @param explainedBy id of the alarm that explains it, or 0
 * @param impact who suffers, or empty
 */
record AlarmLine(
        long id,
        String title,
        String severity,
        String resource,
        String site,
        String text,
        String since,
        String at,
        String began,
        String lasted,
        boolean active,
        String standing,
        String cause,
        long explainedBy,
        int explains,
        String impact,
        boolean planned) {

    static AlarmLine of(OpenAlarm alarm, Instant now) {
        String site = alarm.customer().isEmpty() ? "" : alarm.site() + ", " + alarm.customer();
        return new AlarmLine(
                alarm.id(),
                alarm.key().type().title(),
                alarm.severity().word(),
                AlarmWords.resource(alarm),
                site,
                alarm.text(),
                Words.moment(alarm.raised(), alarm.zone()),
                alarm.raised().toString(),
                AlarmWords.began(alarm),
                AlarmWords.lasted(alarm, now),
                alarm.active(),
                AlarmWords.standing(alarm),
                AlarmWords.cause(alarm),
                alarm.causedBy().orElse(0),
                alarm.pointing(),
                WhoSuffers.shortly(alarm),
                alarm.planned());
    }
}
