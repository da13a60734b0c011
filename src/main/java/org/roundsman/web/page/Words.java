package org.roundsman.web.page;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** Figures and times as a person reads them. */
public final class Words {

    /** What stands where a figure could not be read. */
    public static final String NOT_AVAILABLE = "not available";

    private static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern("EEE d MMM, HH:mm", Locale.ENGLISH);
    private static final DateTimeFormatter SECOND =
            DateTimeFormatter.ofPattern("EEE d MMM yyyy, HH:mm:ss", Locale.ENGLISH);
    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ENGLISH);

    private Words() {}

    /** A length of time in its two largest units: {@code 3 h 20 min}. */
    public static String length(Duration length) {
        long minutes = Math.max(0, length.toMinutes());
        if (minutes < 1) {
            return "less than a minute";
        }
        if (minutes < 60) {
            return minutes + " min";
        }
        long hours = minutes / 60;
        if (hours < 24) {
            return hours + " h" + (minutes % 60 == 0 ? "" : " " + minutes % 60 + " min");
        }
        long days = hours / 24;
        return days + (days == 1 ? " day" : " days") + (hours % 24 == 0 ? "" : " " + hours % 24 + " h");
    }

    /** How long ago that was. */
    public static String ago(Instant then, Instant now) {
        return length(Duration.between(then, now)) + " ago";
    }

    /** A moment in that time zone: {@code Wed 25 Nov, 09:26}. */
    public static String moment(Instant at, ZoneId zone) {
        return MOMENT.format(at.atZone(zone));
    }

    /** A moment to the second in that time zone: {@code Wed 25 Nov 2026, 09:26:03}. */
    public static String second(Instant at, ZoneId zone) {
        return SECOND.format(at.atZone(zone));
    }

    public static String clock(Instant at, ZoneId zone) {
        return CLOCK.format(at.atZone(zone));
    }

    /** A count with separators, or {@link #NOT_AVAILABLE}. */
    public static String count(OptionalInt count) {
        return count.isPresent() ? count(count.getAsInt()) : NOT_AVAILABLE;
    }

    public static String count(long count) {
        return String.format(Locale.ENGLISH, "%,d", count);
    }

    /** {@code 1 site}, {@code 2 sites}. */
    public static String many(long count, String one, String more) {
        return count(count) + " " + (count == 1 ? one : more);
    }

    /** A figure with at most that many decimals, a real minus sign, and its unit; or {@link #NOT_AVAILABLE}. */
    public static String figure(OptionalDouble figure, int decimals, String unit) {
        return figure.isPresent() ? figure(figure.getAsDouble(), decimals, unit) : NOT_AVAILABLE;
    }

    public static String figure(double figure, int decimals, String unit) {
        String digits = String.format(Locale.ENGLISH, "%,." + decimals + "f", figure);
        String shown = digits.contains(".") ? digits.replaceFirst("\\.?0+$", "") : digits;
        return (shown.equals("-0") ? "0" : shown.replace('-', '−')) + (unit.isEmpty() ? "" : "\u00a0" + unit);
    }

    /** Bits per second with the prefix that fits (1 k = 1000). */
    public static String rate(OptionalDouble bitsPerSecond) {
        if (bitsPerSecond.isEmpty()) {
            return NOT_AVAILABLE;
        }
        double bits = bitsPerSecond.getAsDouble();
        if (bits >= 1e9) {
            return figure(bits / 1e9, 2, "Gb/s");
        }
        return bits >= 1e6 ? figure(bits / 1e6, 1, "Mb/s") : figure(bits / 1e3, 1, "kb/s");
    }
}
