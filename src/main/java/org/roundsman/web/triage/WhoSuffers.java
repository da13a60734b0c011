package org.roundsman.web.triage;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.roundsman.alarms.Impact;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.alarms.Resource;
import org.roundsman.web.page.Words;

/** Who suffers from an alarm, in words; of one that is over, who suffered. */
public final class WhoSuffers {

    private WhoSuffers() {}

    /**
     * With everything that is known: {@code about 40 people would be online now: 12 staff, 28 guests; 14 access points}. Empty
     * for the service itself.
     */
    public static String of(OpenAlarm alarm) {
        String devices = devices(alarm);
        String people = people(alarm);
        if (people.isEmpty() || devices.isEmpty()) {
            return people + devices;
        }
        return people + "; " + devices;
    }

    /**
     * For a line of a list: {@code About 40 people would be online now, 14 access points affected}. Empty where nothing is
     * known.
     */
    public static String shortly(OpenAlarm alarm) {
        List<String> parts = new ArrayList<>();
        if (alarm.impact().clients().isPresent()) {
            parts.add(usual(alarm, alarm.impact().clients().getAsInt()));
        }
        if (alarm.impact().devices() > 0) {
            parts.add(devices(alarm) + " affected");
        }
        String words = String.join(", ", parts);
        return words.isEmpty() ? "" : Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }

    /**
     * What a count of clients says: {@code would be online} of those whom the fault cuts off, {@code would have been online}
     * once it is over, {@code are usually online} of those who stay online.
     */
    public static String verb(OpenAlarm alarm) {
        if (!alarm.key().type().cutsOff()) {
            return "are usually online";
        }
        return alarm.active() ? "would be online" : "would have been online";
    }

    private static String devices(OpenAlarm alarm) {
        int devices = alarm.impact().devices();
        return devices == 0 ? "" : Words.many(devices, "access point", "access points");
    }

    private static String people(OpenAlarm alarm) {
        Impact impact = alarm.impact();
        OptionalInt clients = impact.clients();
        if (clients.isEmpty()) {
            boolean nothing = alarm.key().resource().kind() == Resource.Kind.SERVICE || impact.devices() == 0;
            return nothing ? "" : "how many people are usually online at " + hour(alarm) + " is not known yet";
        }
        String parts = clients.getAsInt() == 0 ? "" : parts(impact);
        return usual(alarm, clients.getAsInt()) + (parts.isEmpty() ? "" : ": " + parts);
    }

    private static String usual(OpenAlarm alarm, int people) {
        if (people == 0 && alarm.impact().devices() == 0) {
            return "nobody: no access point is affected";
        }
        if (people == 0) {
            return "nobody is usually online at " + hour(alarm);
        }
        String about = "about " + Words.many(people, "person", "people") + " ";
        if (!alarm.key().type().cutsOff()) {
            return about + "usually online at " + hour(alarm);
        }
        return about + verb(alarm) + (alarm.active() ? " now" : "");
    }

    private static String hour(OpenAlarm alarm) {
        return alarm.active() ? "this hour" : "that hour";
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
}
