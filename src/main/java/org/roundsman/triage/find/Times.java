package org.roundsman.triage.find;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Times in words, in the site's own zone; the day is said where it is not today. */
public final class Times {

    private static final DateTimeFormatter SECOND = DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ENGLISH);
    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("HH:mm", Locale.ENGLISH);
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM ", Locale.ENGLISH);

    private final ZoneId zone;
    private final LocalDate today;

    public Times(ZoneId zone, Instant now) {
        this.zone = zone;
        this.today = now.atZone(zone).toLocalDate();
    }

    /** To the second: {@code 10:41:12}, {@code 19 Nov 10:41:12}. */
    public String second(Instant at) {
        return with(SECOND, at);
    }

    /** To the minute: {@code 10:41}, {@code 19 Nov 10:41}. */
    public String minute(Instant at) {
        return with(MINUTE, at);
    }

    private String with(DateTimeFormatter clock, Instant at) {
        ZonedDateTime local = at.atZone(zone);
        return (local.toLocalDate().equals(today) ? "" : DAY.format(local)) + clock.format(local);
    }
}
