package org.roundsman.notices.text;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.roundsman.alarms.CauseKind;
import org.roundsman.alarms.Impact;
import org.roundsman.alarms.OpenAlarm;

/** An alarm as a person reads it in a message. */
final class AlarmWords {

    private static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern("EEE d MMM, HH:mm zzz", Locale.ENGLISH);

    private AlarmWords() {}

    /** {@code Does not answer: Gate 2 AP at Pier North (Saltmarsh Ferry Line)}. */
    static String where(OpenAlarm alarm) {
        String what = alarm.key().type().title();
        boolean named = !alarm.resourceName().isBlank() && !alarm.resourceName().equals(alarm.site());
        String thing = named ? what + ": " + alarm.resourceName() : what;
        return alarm.site().isBlank() ? thing : thing + " at " + alarm.site() + customer(alarm);
    }

    private static String customer(OpenAlarm alarm) {
        return alarm.customer().isBlank() ? "" : " (" + alarm.customer() + ")";
    }

    /** The same with the cause, where the title does not say it all. */
    static String headline(OpenAlarm alarm) {
        return alarm.cause() == CauseKind.ITSELF
                ? where(alarm)
                : where(alarm) + ": " + alarm.cause().word();
    }

    static String moment(Instant at, ZoneId zone) {
        return MOMENT.format(at.atZone(zone));
    }

    static String length(Duration length) {
        long minutes = length.toMinutes();
        if (minutes < 1) {
            return "less than a minute";
        }
        if (minutes < 60) {
            return minutes + " min";
        }
        long hours = minutes / 60;
        return hours < 48 ? hours + " h " + minutes % 60 + " min" : hours / 24 + " days " + hours % 24 + " h";
    }

    /** Who suffers, in sentences; never empty. */
    static List<String> impact(OpenAlarm alarm, boolean now) {
        Impact impact = alarm.impact();
        List<String> lines = new ArrayList<>();
        lines.add(
                impact.clients().isPresent()
                        ? people(alarm, impact.clients().getAsInt(), now)
                        : "How many people would be online is not known.");
        if (impact.devices() > 0) {
            lines.add(impact.devices()
                    + (impact.devices() == 1 ? " access point is affected." : " access points are affected."));
        }
        lines.add(impact.serviceHours() ? "Within the site's service hours." : "Outside the site's service hours.");
        return lines;
    }

    private static String people(OpenAlarm alarm, int clients, boolean now) {
        Impact impact = alarm.impact();
        String usually = "usually online at " + (now ? "this hour" : "that hour");
        if (clients == 0) {
            return impact.devices() == 0 ? "Nobody: no access point is affected." : "Nobody is " + usually + ".";
        }
        boolean cutOff = alarm.key().type().cutsOff();
        String online = now ? "would be online now" : "would have been online";
        return "About " + clients + (clients == 1 ? " person " : " people ")
                + (cutOff ? online : (clients == 1 ? "is " : "are ") + usually)
                + " (staff networks " + known(impact.staff()) + ", guest networks " + known(impact.guest()) + ").";
    }

    private static String known(java.util.OptionalInt count) {
        return count.isPresent() ? String.valueOf(count.getAsInt()) : "not known";
    }

    /** What a program gets. */
    static Map<String, Object> facts(OpenAlarm alarm) {
        Map<String, Object> facts = new LinkedHashMap<>();
        facts.put("alarmId", alarm.id());
        facts.put("type", alarm.key().type().id());
        facts.put("severity", alarm.severity().word());
        facts.put("customer", alarm.customer());
        facts.put("site", alarm.site());
        facts.put("resource", alarm.resourceName());
        facts.put("began", alarm.began().toString());
        facts.put("raised", alarm.raised().toString());
        alarm.clearedAt().ifPresent(at -> facts.put("cleared", at.toString()));
        facts.put("text", alarm.text());
        facts.put("cause", alarm.cause().word());
        facts.put("evidence", alarm.evidence());
        Map<String, Object> impact = new LinkedHashMap<>();
        alarm.impact().clients().ifPresent(count -> impact.put("clients", count));
        alarm.impact().staff().ifPresent(count -> impact.put("staff", count));
        alarm.impact().guest().ifPresent(count -> impact.put("guest", count));
        impact.put("devices", alarm.impact().devices());
        impact.put("serviceHours", alarm.impact().serviceHours());
        facts.put("impact", impact);
        facts.put("advice", alarm.advice());
        return facts;
    }
}
