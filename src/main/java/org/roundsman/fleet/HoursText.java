package org.roundsman.fleet;

import java.time.DayOfWeek;
import java.time.LocalTime;
import java.time.format.DateTimeParseException;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Service hours as lines of text that a person reads and writes: {@code Mon-Fri 08:00-18:00}. */
public final class HoursText {

    private static final Pattern LINE = Pattern.compile(
            "(\\p{Alpha}{3})(?:\\s*-\\s*(\\p{Alpha}{3}))?\\s+(\\d{1,2}:\\d{2})\\s*-\\s*(\\d{1,2}:\\d{2})");

    private HoursText() {}

    /** One line for each stretch of neighbouring days with the same hours. */
    public static List<String> lines(List<ServiceHours> hours) {
        List<String> lines = new ArrayList<>();
        List<ServiceHours> left = new ArrayList<>(hours);
        while (!left.isEmpty()) {
            ServiceHours first = left.remove(0);
            int last = first.weekday;
            for (ServiceHours next = same(left, first, last + 1); next != null; next = same(left, first, last + 1)) {
                left.remove(next);
                last = next.weekday;
            }
            String days = day(first.weekday) + (last == first.weekday ? "" : "-" + day(last));
            lines.add(days + " " + first.opens + "-" + closing(first.closes));
        }
        return lines;
    }

    private static ServiceHours same(List<ServiceHours> left, ServiceHours as, int weekday) {
        return left.stream()
                .filter(h -> h.weekday == weekday && h.opens.equals(as.opens) && h.closes.equals(as.closes))
                .findFirst()
                .orElse(null);
    }

    private static String closing(LocalTime closes) {
        return closes.equals(LocalTime.MIDNIGHT) ? "24:00" : closes.toString();
    }

    private static String day(int weekday) {
        return DayOfWeek.of(weekday).getDisplayName(TextStyle.SHORT, Locale.ENGLISH);
    }

    /**
     * Reads such lines.
     *
     * @throws IllegalArgumentException naming the first line that cannot be read, and what would be right
     */
    public static List<ServiceHours> read(String text) {
        return text.lines()
                .map(String::strip)
                .filter(line -> !line.isEmpty())
                .flatMap(line -> readLine(line).stream())
                .toList();
    }

    private static List<ServiceHours> readLine(String line) {
        Matcher matcher = LINE.matcher(line);
        if (!matcher.matches()) {
            throw unreadable(line);
        }
        int first = weekday(matcher.group(1), line);
        int last = matcher.group(2) == null ? first : weekday(matcher.group(2), line);
        if (last < first) {
            throw unreadable(line);
        }
        List<ServiceHours> hours = new ArrayList<>();
        for (int day = first; day <= last; day++) {
            hours.add(new ServiceHours(day, time(matcher.group(3), line), time(matcher.group(4), line)));
        }
        return hours;
    }

    private static int weekday(String word, String line) {
        for (DayOfWeek day : DayOfWeek.values()) {
            if (day.getDisplayName(TextStyle.SHORT, Locale.ENGLISH).equalsIgnoreCase(word)) {
                return day.getValue();
            }
        }
        throw unreadable(line);
    }

    private static LocalTime time(String text, String line) {
        try {
            return text.equals("24:00") ? LocalTime.MIDNIGHT : LocalTime.parse(text.length() == 4 ? "0" + text : text);
        } catch (DateTimeParseException e) {
            throw unreadable(line);
        }
    }

    private static IllegalArgumentException unreadable(String line) {
        return new IllegalArgumentException("“" + line
                + "” cannot be read; write one stretch a line, such as Mon-Fri 08:00-18:00 or Sat 09:00-24:00");
    }
}
