package org.roundsman.web.chart;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** The lengths of time that charts show. */
public enum Range {
    DAY(Duration.ofDays(1), Duration.ofMinutes(15), 1, "HH:mm"),
    WEEK(Duration.ofDays(7), Duration.ofHours(2), 1, "EEE"),
    MONTH(Duration.ofDays(31), Duration.ofHours(6), 7, "d MMM");

    private static final int HOURS_APART = 6;

    private final Duration length;
    private final Duration step;
    private final int daysApart;
    private final DateTimeFormatter format;

    Range(Duration length, Duration step, int daysApart, String format) {
        this.length = length;
        this.step = step;
        this.daysApart = daysApart;
        this.format = DateTimeFormatter.ofPattern(format, Locale.ENGLISH);
    }

    /** What stands in the address and on the page. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** The range of that word, or a day. */
    public static Range of(String word) {
        return Arrays.stream(values())
                .filter(r -> r.word().equals(word))
                .findFirst()
                .orElse(DAY);
    }

    /** The time it covers when it ends now: whole steps, the last of which holds the present moment. */
    public Window window(Instant now, ZoneId zone) {
        long seconds = step.toSeconds();
        Instant to = Instant.ofEpochSecond((now.getEpochSecond() / seconds + 1) * seconds);
        return new Window(to.minus(length), to, step, zone, this);
    }

    /** A label under a chart. */
    record Tick(Instant at, String text) {}

    List<Tick> ticks(Window window) {
        List<Tick> ticks = new ArrayList<>();
        ZonedDateTime at = window.from().atZone(window.zone()).truncatedTo(ChronoUnit.DAYS);
        while (at.toInstant().isBefore(window.to())) {
            if (!at.toInstant().isBefore(window.from())) {
                ticks.add(new Tick(at.toInstant(), format.format(at)));
            }
            at = this == DAY ? sixHoursOn(at) : at.plusDays(daysApart);
        }
        return ticks;
    }

    /** By the clock on the wall, also on days of 23 or 25 hours. */
    private static ZonedDateTime sixHoursOn(ZonedDateTime at) {
        int hour = at.getHour() / HOURS_APART * HOURS_APART + HOURS_APART;
        ZonedDateTime midnight = at.truncatedTo(ChronoUnit.DAYS);
        return hour >= 24 ? midnight.plusDays(1) : midnight.withHour(hour);
    }
}
