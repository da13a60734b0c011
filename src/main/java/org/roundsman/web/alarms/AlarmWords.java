package org.roundsman.web.alarms;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.OptionalInt;
import org.roundsman.alarms.CauseKind;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.alarms.Resource;
import org.roundsman.web.page.Words;

/** Alarms in words. */
final class AlarmWords {

    private AlarmWords() {}

    /** What it is about. */
    static String resource(OpenAlarm alarm) {
        return alarm.key().resource().kind() == Resource.Kind.SERVICE ? "Roundsman itself" : alarm.resourceName();
    }

    /** The page of what it is about, or empty. */
    static String resourceLink(OpenAlarm alarm) {
        Resource resource = alarm.key().resource();
        return switch (resource.kind()) {
            case SERVICE -> "/own-health";
            case SITE -> "/sites/" + resource.id();
            case DEVICE -> "/devices/" + resource.id();
        };
    }

    /** Title and resource. */
    static String name(OpenAlarm alarm) {
        return alarm.key().type().title() + ": " + resource(alarm);
    }

    /** Since when the fault is, which is a while before it was raised: the clock where both are on one day of the site. */
    static String began(OpenAlarm alarm) {
        ZoneId zone = alarm.zone();
        boolean oneDay = alarm.began()
                .atZone(zone)
                .toLocalDate()
                .equals(alarm.raised().atZone(zone).toLocalDate());
        return oneDay ? Words.clock(alarm.began(), zone) : Words.moment(alarm.began(), zone);
    }

    /** How long the fault lasted, or has lasted. */
    static String lasted(OpenAlarm alarm, Instant now) {
        return Words.length(Duration.between(alarm.began(), alarm.clearedAt().orElse(now)));
    }

    /** What people have made of it. */
    static String standing(OpenAlarm alarm) {
        String by = alarm.operatorBy().isEmpty() ? "" : " by " + alarm.operatorBy();
        return switch (alarm.operator()) {
            case NONE -> "new";
            case ACK -> alarm.takenBy().isEmpty() ? "acknowledged" + by : "taken by " + alarm.takenBy();
            case CLOSED -> "closed" + by;
            case SHELVED ->
                "shelved until "
                        + alarm.operatorUntil()
                                .map(until -> Words.moment(until, alarm.zone()))
                                .orElse("");
        };
    }

    /** What is behind it; empty where its title says it all. */
    static String cause(OpenAlarm alarm) {
        return alarm.cause() == CauseKind.ITSELF ? "" : alarm.cause().word();
    }

    /** Clients of one sort, or that there is no past to tell from. */
    static String clients(OptionalInt count) {
        if (count.isEmpty()) {
            return "not known";
        }
        return count.getAsInt() == 0 ? "none" : "about " + Words.count(count.getAsInt());
    }
}
