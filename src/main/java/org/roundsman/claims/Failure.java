package org.roundsman.claims;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.measure.Condition;
import org.roundsman.readings.Availability;
import org.roundsman.readings.Span;

/**
 * What the readings say about a unit that fails, in sentences for whoever decides about a claim. Pure.
 *
 * @param from when the time looked at began
 * @param to when it ended
 * @param left whether it ended because the unit left its place: what goes on there is none of its own
 * @param spans of the device, in any order
 * @param restarts the moments at which it started again
 * @param alarms of the device and its parts, the latest first
 * @param moreAlarms how many alarms there are besides
 */
record Failure(
        Instant from,
        Instant to,
        boolean left,
        Availability availability,
        List<Span> spans,
        List<Instant> restarts,
        List<OpenAlarm> alarms,
        long moreAlarms) {

    /** More of one sort are not told one by one. */
    static final int MOST = 12;

    private static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ENGLISH);

    /** In the time of that zone. */
    List<String> sentences(ZoneId zone) {
        List<String> lines = new ArrayList<>();
        lines.add("Looked at: " + moment(from, zone) + " to " + moment(to, zone) + ", time zone " + zone.getId() + ".");
        lines.add(available());
        silence(zone, lines);
        restarts(zone, lines);
        alarms(zone, lines);
        return lines;
    }

    private String available() {
        if (availability.share().isEmpty()) {
            return "Availability: no figure, nothing of this time counts.";
        }
        double floor = Math.floor(availability.share().getAsDouble() * 10_000) / 100;
        StringBuilder text = new StringBuilder(String.format(
                Locale.ENGLISH,
                "Availability: %.2f %% of the time that counts, silent for %s",
                floor,
                length(availability.silent())));
        if (!availability.planned().isZero()) {
            text.append("; planned work of ")
                    .append(length(availability.planned()))
                    .append(" is left out");
        }
        if (availability.unwatched().toMinutes() > 0) {
            text.append("; not watched for ").append(length(availability.unwatched()));
        }
        return text.append('.').toString();
    }

    private void silence(ZoneId zone, List<String> lines) {
        List<Span> silent = spans.stream()
                .filter(span -> span.condition() == Condition.SILENT)
                .sorted((a, b) -> b.from().compareTo(a.from()))
                .toList();
        lines.add(silent.isEmpty() ? "It was never silent." : "Silent " + times(silent.size()) + ":");
        silent.stream().limit(MOST).forEach(span -> {
            Instant begin = span.from().isBefore(from) ? from : span.from();
            boolean over = span.to().filter(end -> !end.isAfter(to)).isPresent();
            Instant end = over ? span.to().get() : to;
            lines.add("· " + moment(begin, zone) + " for " + length(Duration.between(begin, end))
                    + (over ? "" : left ? ", until the unit left" : ", and it goes on"));
        });
        more(silent.size(), lines);
    }

    private void restarts(ZoneId zone, List<String> lines) {
        lines.add(restarts.isEmpty() ? "No restart was seen." : "Restarted " + times(restarts.size()) + ":");
        restarts.stream()
                .sorted((a, b) -> b.compareTo(a))
                .limit(MOST)
                .forEach(at -> lines.add("· " + moment(at, zone)));
        more(restarts.size(), lines);
    }

    private void alarms(ZoneId zone, List<String> lines) {
        lines.add(alarms.isEmpty() ? "No alarm was raised." : "Alarms, the latest first:");
        for (OpenAlarm alarm : alarms) {
            String part = alarm.key().resource().part();
            lines.add(
                    "· " + moment(alarm.raised(), zone) + " " + alarm.severity().word() + ": "
                            + alarm.key().type().title() + (part.isEmpty() ? "" : " (" + part + ")") + ", "
                            + lasted(alarm) + ". " + alarm.text());
        }
        if (moreAlarms > 0) {
            lines.add("· and " + moreAlarms + " more");
        }
    }

    private String lasted(OpenAlarm alarm) {
        if (left && alarm.clearedAt().filter(at -> !at.isAfter(to)).isEmpty()) {
            return "until the unit left";
        }
        return alarm.clearedAt()
                .map(at -> "for " + length(Duration.between(alarm.began(), at)))
                .orElse("goes on");
    }

    private static void more(int all, List<String> lines) {
        if (all > MOST) {
            lines.add("· and " + (all - MOST) + " more, earlier");
        }
    }

    private static String times(int count) {
        return count == 1 ? "once" : count + " times";
    }

    private static String moment(Instant at, ZoneId zone) {
        return MOMENT.format(at.atZone(zone));
    }

    /** In its two largest units. */
    static String length(Duration length) {
        long minutes = Math.max(0, length.toMinutes());
        if (minutes < 1) {
            return "less than a minute";
        }
        if (minutes < 60) {
            return minutes + " min";
        }
        long hours = minutes / 60;
        return hours < 24
                ? hours + " h " + minutes % 60 + " min"
                : hours / 24 + (hours / 24 == 1 ? " day " : " days ") + hours % 24 + " h";
    }
}
