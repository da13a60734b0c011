package org.roundsman.web.triage;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.roundsman.alarms.CauseKind;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.alarms.Resource;
import org.roundsman.web.page.Words;

/** What stands about an alarm, in plain words. */
public final class AlarmWords {

    private AlarmWords() {}

    /** The cause where one was found, else what is seen: {@code Switch port delivers no power}. */
    public static String title(OpenAlarm alarm) {
        boolean found =
                alarm.cause() != CauseKind.NOT_SURE && !alarm.cause().word().isEmpty();
        String word = found ? alarm.cause().word() : alarm.key().type().title();
        return Character.toUpperCase(word.charAt(0)) + word.substring(1);
    }

    /** What stands under the title: what is seen where the title is the cause, and how sure we are; mostly empty. */
    public static String under(OpenAlarm alarm) {
        List<String> parts = new ArrayList<>();
        String seen = alarm.key().type().title();
        if (!seen.equalsIgnoreCase(title(alarm))) {
            parts.add(seen);
        }
        if (alarm.active() && !alarm.settled()) {
            parts.add("the cause is still being worked out");
        } else if (alarm.cause() == CauseKind.NOT_SURE) {
            parts.add("we are not sure of the cause");
        }
        return String.join("; ", parts);
    }

    /** {@code for 12 min, since 10:41 site time}; with the day where that was not today. */
    public static String since(OpenAlarm alarm, Instant now) {
        return "for " + Words.length(Duration.between(alarm.began(), now)) + ", since "
                + moment(alarm.began(), alarm, now);
    }

    /** {@code lasted 12 min, 10:41 to 10:53 site time}; with the days where it was not today, or went over midnight. */
    public static String lasted(OpenAlarm alarm, Instant now) {
        Instant end = alarm.clearedAt().orElse(now);
        ZoneId zone = alarm.zone();
        boolean oneDay = day(alarm.began(), zone).equals(day(end, zone));
        String from = oneDay ? moment(alarm.began(), zone, now) : Words.moment(alarm.began(), zone);
        String to = oneDay ? Words.clock(end, zone) : Words.moment(end, zone);
        return "lasted " + Words.length(Duration.between(alarm.began(), end)) + ", " + from + " to " + to + " "
                + clock(alarm);
    }

    /** By which clock its times are told: sites in several time zones stand in one list. */
    static String clock(OpenAlarm alarm) {
        return alarm.siteId().isEmpty() ? "UTC" : "site time";
    }

    /** {@code 10:41 site time}; with the day where it is another one. */
    static String moment(Instant at, OpenAlarm alarm, Instant now) {
        return moment(at, alarm.zone(), now) + " " + clock(alarm);
    }

    private static String moment(Instant at, ZoneId zone, Instant now) {
        return day(at, zone).equals(day(now, zone)) ? Words.clock(at, zone) : Words.moment(at, zone);
    }

    private static LocalDate day(Instant at, ZoneId zone) {
        return at.atZone(zone).toLocalDate();
    }

    /** Empty for the service itself, which has no hours. */
    public static String hours(OpenAlarm alarm) {
        if (alarm.siteId().isEmpty()) {
            return "";
        }
        return alarm.impact().serviceHours() ? "in service hours" : "outside service hours";
    }

    /** What it is about: the device with its part, the site, or Roundsman itself. */
    public static String resource(OpenAlarm alarm) {
        return alarm.resourceName().isEmpty() ? "Roundsman itself" : alarm.resourceName();
    }

    /** The page of what it is about; own health for the service itself. */
    static String resourceLink(OpenAlarm alarm) {
        Resource resource = alarm.key().resource();
        return switch (resource.kind()) {
            case DEVICE -> "/devices/" + resource.id();
            case SITE -> "/sites/" + resource.id();
            case SERVICE -> "/own-health";
        };
    }
}
