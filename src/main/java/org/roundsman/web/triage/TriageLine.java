package org.roundsman.web.triage;

import java.time.Instant;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.alarms.OperatorState;
import org.roundsman.web.page.Words;

/**
 * One alarm in the list.
 *
 * @param severity in a word, also the name of its shape
 * @param since how long, in words
 * @param at when it began, for machines
 * @param explains how many alarms it explains, in words, or empty
 * @param step the first step of the evidence, or what is seen
 * @param above why it stands above the next one, or empty
 * @param chosen it is the one beside the list
 */
record TriageLine(
        long id,
        String severity,
        String title,
        String under,
        Where where,
        String since,
        String at,
        String affected,
        String hours,
        String holder,
        String state,
        String step,
        String explains,
        String above,
        boolean chosen,
        Acts acts) {

    /** What it is about and where that is; links and names may be empty. */
    record Where(String resource, String link, String place, String customer, String site, String siteLink) {

        static Where of(OpenAlarm alarm) {
            boolean siteItself = alarm.resourceName().equals(alarm.site());
            return new Where(
                    AlarmWords.resource(alarm),
                    AlarmWords.resourceLink(alarm),
                    alarm.place(),
                    alarm.customer(),
                    siteItself ? "" : alarm.site(),
                    alarm.siteId().isPresent() ? "/sites/" + alarm.siteId().getAsLong() : "");
        }
    }

    /** What may be done from the line. */
    record Acts(boolean acknowledge, boolean take, boolean release) {
        static Acts of(OpenAlarm alarm, Reader reader) {
            boolean open = reader.acts() && alarm.active() && alarm.operator() != OperatorState.SHELVED;
            boolean mine = alarm.takenBy().equals(reader.name());
            return new Acts(open && alarm.operator() == OperatorState.NONE, open && !mine, open && mine);
        }

        public boolean any() {
            return acknowledge || take || release;
        }
    }

    static TriageLine of(OpenAlarm alarm, Reader reader, Instant now, String above, boolean chosen) {
        return new TriageLine(
                alarm.id(),
                alarm.active() ? alarm.severity().word() : "cleared",
                AlarmWords.title(alarm),
                AlarmWords.under(alarm),
                Where.of(alarm),
                alarm.active() ? AlarmWords.since(alarm, now) : AlarmWords.lasted(alarm, now),
                alarm.began().toString(),
                WhoSuffers.of(alarm),
                AlarmWords.hours(alarm),
                reader.holder(alarm.takenBy()),
                state(alarm, reader, now),
                alarm.evidence().stream().findFirst().orElse(alarm.text()),
                alarm.pointing() == 0 ? "" : "explains " + Words.many(alarm.pointing(), "alarm", "alarms"),
                above,
                chosen,
                Acts.of(alarm, reader));
    }

    /** What people did with it, in words; empty for a new one. */
    static String state(OpenAlarm alarm, Reader reader, Instant now) {
        if (alarm.operator() == OperatorState.NONE) {
            return "";
        }
        StringBuilder words = new StringBuilder(alarm.operator().word());
        alarm.operatorUntil().ifPresent(until -> words.append(" until ").append(AlarmWords.moment(until, alarm, now)));
        if (reader.inside() && !alarm.operatorBy().isEmpty()) {
            words.append(" by ").append(alarm.operatorBy());
        }
        if (reader.inside() && !alarm.operatorReason().isEmpty()) {
            words.append(": ").append(alarm.operatorReason());
        }
        return words.toString();
    }
}
