package org.roundsman.web.planned;

import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.roundsman.planned.Repetition;
import org.roundsman.planned.Stretch;
import org.roundsman.planned.Timing;

/** Reads times as people enter them, and collects what cannot be read. */
final class Entered {

    private final Map<String, String> faults = new LinkedHashMap<>();

    /** The days that end a repetition and that it leaves out; the last may be null. */
    record Days(LocalDate last, List<LocalDate> skipped) {}

    Map<String, String> faults() {
        return faults;
    }

    void fault(String field, String text) {
        faults.putIfAbsent(field, text);
    }

    static String text(String value) {
        return value == null ? "" : value;
    }

    /** Null, with a fault, when it cannot be read. */
    Timing once(String from, String to, ZoneId zone) {
        Instant begin = moment("from", from, zone);
        Instant end = moment("to", to, zone);
        if (begin == null || end == null) {
            return null;
        }
        if (!begin.isBefore(end)) {
            fault("to", "the end comes before the beginning");
            return null;
        }
        return new Timing.Once(new Stretch(begin, end));
    }

    /** Null when something of it could not be read. */
    Timing repeating(Repetition how, LocalTime start, Duration length, LocalDate first, Days days) {
        return start == null || length == null || first == null
                ? null
                : Timing.Repeating.of(how, start, length, first, days.last(), days.skipped());
    }

    private Instant moment(String field, String text, ZoneId zone) {
        try {
            return LocalDateTime.parse(text(text).strip()).atZone(zone).toInstant();
        } catch (DateTimeException e) {
            fault(field, "a day and a time, such as 2026-03-29 22:30");
            return null;
        }
    }

    LocalTime time(String field, String text) {
        try {
            return LocalTime.parse(text(text).strip());
        } catch (DateTimeException e) {
            fault(field, "a time of day, such as 22:30");
            return null;
        }
    }

    Duration length(String field, String hours, String minutes) {
        try {
            String h = text(hours).strip();
            String m = text(minutes).strip();
            return Duration.ofHours(h.isEmpty() ? 0 : Integer.parseInt(h))
                    .plusMinutes(m.isEmpty() ? 0 : Integer.parseInt(m));
        } catch (NumberFormatException e) {
            fault(field, "whole hours and minutes");
            return null;
        }
    }

    LocalDate day(String field, String text) {
        try {
            return LocalDate.parse(text(text).strip());
        } catch (DateTimeException e) {
            fault(field, "a day, such as 2026-03-29");
            return null;
        }
    }

    LocalDate dayOrNone(String field, String text) {
        return text(text).isBlank() ? null : day(field, text);
    }

    List<LocalDate> days(String field, String text) {
        List<LocalDate> days = new ArrayList<>();
        for (String part : text(text).split("[,;\\s]+")) {
            if (!part.isEmpty()) {
                LocalDate day = day(field, part);
                if (day != null) {
                    days.add(day);
                }
            }
        }
        return days;
    }

    int number(String field, String text) {
        try {
            return Integer.parseInt(text(text).strip());
        } catch (NumberFormatException e) {
            fault(field, "choose one of the list");
            return 0;
        }
    }
}
