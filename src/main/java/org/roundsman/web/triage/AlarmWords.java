package org.roundsman.web.triage;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.roundsman.alarms.CauseKind;
import org.roundsman.alarms.EventType;
import org.roundsman.alarms.Impact;
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

    /** {@code for 12 min, since 10:41}; with the day where that was not today. */
    public static String since(OpenAlarm alarm, Instant now) {
        return "for " + Words.length(Duration.between(alarm.began(), now)) + ", since "
                + moment(alarm.began(), alarm.zone(), now);
    }

    /** {@code lasted 12 min, 10:41 to 10:53}. */
    public static String lasted(OpenAlarm alarm, Instant now) {
        Instant end = alarm.clearedAt().orElse(now);
        return "lasted " + Words.length(Duration.between(alarm.began(), end)) + ", "
                + moment(alarm.began(), alarm.zone(), now) + " to " + moment(end, alarm.zone(), now);
    }

    /** The clock of the site, with the day where it is another one. */
    static String moment(Instant at, ZoneId zone, Instant now) {
        boolean today = at.atZone(zone).toLocalDate().equals(now.atZone(zone).toLocalDate());
        return today ? Words.clock(at, zone) : Words.moment(at, zone);
    }

    /** {@code about 40 people would be online now: 12 staff, 28 guests; 14 access points}. */
    public static String affected(OpenAlarm alarm) {
        String devices = alarm.impact().devices() == 0
                ? ""
                : Words.many(alarm.impact().devices(), "access point", "access points");
        String people = people(alarm);
        if (people.isEmpty() || devices.isEmpty()) {
            return people + devices;
        }
        return people + "; " + devices;
    }

    private static String people(OpenAlarm alarm) {
        Impact impact = alarm.impact();
        OptionalInt clients = impact.clients();
        if (clients.isEmpty()) {
            return alarm.key().resource().kind() == Resource.Kind.SERVICE || impact.devices() == 0
                    ? ""
                    : "how many people are usually online at this hour is not known yet";
        }
        if (clients.getAsInt() == 0) {
            return "nobody is usually online at this hour";
        }
        boolean cutOff = alarm.key().type().event() == EventType.COMMUNICATIONS;
        String count = Words.many(clients.getAsInt(), "person", "people");
        String parts = parts(impact);
        return "about " + count + (cutOff ? " would be online now" : " usually online at this hour")
                + (parts.isEmpty() ? "" : ": " + parts);
    }

    private static String parts(Impact impact) {
        List<String> parts = new ArrayList<>();
        add(parts, impact.staff(), "staff", "staff");
        add(parts, impact.guest(), "guest", "guests");
        add(parts, impact.other(), "other", "others");
        return String.join(", ", parts);
    }

    private static void add(List<String> parts, OptionalInt count, String one, String more) {
        if (count.orElse(0) > 0) {
            parts.add(Words.many(count.getAsInt(), one, more));
        }
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
