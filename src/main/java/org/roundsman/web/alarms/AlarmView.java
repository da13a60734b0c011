package org.roundsman.web.alarms;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.Episode;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.alarms.OperatorState;
import org.roundsman.alarms.Resource;
import org.roundsman.web.page.Words;
import org.roundsman.web.triage.WhoSuffers;

/**
 * What the page of one alarm shows.
 *
 * @param episode the current or last one
 * @param cause the alarm that explains it; null where none does
 * @param explains alarms that it explains
 */
record AlarmView(
        OpenAlarm alarm,
        Episode episode,
        List<EpisodeLine> episodes,
        List<PastLine> past,
        boolean pastIsCut,
        AlarmLine cause,
        List<AlarmLine> explains,
        Instant now) {

    private ZoneId zone() {
        return alarm.zone();
    }

    public long id() {
        return alarm.id();
    }

    public String title() {
        return alarm.key().type().title();
    }

    public String resource() {
        return AlarmWords.resource(alarm);
    }

    public String resourceLink() {
        return AlarmWords.resourceLink(alarm);
    }

    /** Whether it is about a device or a part of one. */
    public boolean aboutDevice() {
        return alarm.key().resource().kind() == Resource.Kind.DEVICE;
    }

    public String severity() {
        return alarm.severity().word();
    }

    public String meaning() {
        return alarm.key().type().meaning();
    }

    public String advice() {
        return alarm.advice();
    }

    public String event() {
        return alarm.key().type().event().word();
    }

    /** Whether it is active, and for how long. */
    public String course() {
        String lasted = AlarmWords.lasted(alarm, now);
        return alarm.active()
                ? "active for " + lasted
                : "cleared " + Words.ago(alarm.clearedAt().orElseThrow(), now) + ", after " + lasted;
    }

    public String standing() {
        return AlarmWords.standing(alarm);
    }

    public boolean active() {
        return alarm.active();
    }

    public boolean shelved() {
        return alarm.operator() == OperatorState.SHELVED;
    }

    public boolean acknowledged() {
        return alarm.operator() == OperatorState.ACK;
    }

    public boolean closed() {
        return alarm.operator() == OperatorState.CLOSED;
    }

    public boolean taken() {
        return !alarm.takenBy().isEmpty();
    }

    public String began() {
        return Words.second(alarm.began(), zone());
    }

    public String raised() {
        return Words.second(alarm.raised(), zone());
    }

    public String changed() {
        return Words.second(alarm.changed(), zone());
    }

    public String cleared() {
        return alarm.clearedAt().map(at -> Words.second(at, zone())).orElse("");
    }

    public String causeWords() {
        return AlarmWords.cause(alarm);
    }

    public boolean workedOut() {
        return alarm.settled() || !alarm.active();
    }

    public String staff() {
        return AlarmWords.clients(alarm.impact().staff());
    }

    public String guest() {
        return AlarmWords.clients(alarm.impact().guest());
    }

    public String other() {
        return AlarmWords.clients(alarm.impact().other());
    }

    public boolean clientsKnown() {
        return alarm.impact().clients().isPresent();
    }

    /** What its counts of clients mean: {@code Clients that would be online: the median of this hour of the week}. */
    public String clientsMeaning() {
        return "Clients that " + WhoSuffers.verb(alarm) + ": the median of " + (alarm.active() ? "this" : "that")
                + " hour of the week over four weeks";
    }

    /** Whether it is about a decision and not about a fault. */
    public boolean toBePlanned() {
        AlarmType type = alarm.key().type();
        return type == AlarmType.FIRMWARE_WITHDRAWN || type == AlarmType.COVER_ENDING;
    }
}
