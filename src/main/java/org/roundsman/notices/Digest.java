package org.roundsman.notices;

import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.temporal.TemporalAdjusters;
import java.util.Arrays;
import java.util.Optional;

/** How often a person gets a summary of what happened. The name is what tables store. */
public enum Digest {
    NONE("none"),
    DAILY("daily"),
    WEEKLY("weekly");

    private final String word;

    Digest(String word) {
        this.word = word;
    }

    /** As forms and the API name it. */
    public String word() {
        return word;
    }

    /** The one of that word. */
    public static Optional<Digest> of(String word) {
        return Arrays.stream(values())
                .filter(digest -> digest.word.equals(word))
                .findFirst();
    }

    /**
     * The latest time, up to now, at which one is due; empty for none. On a day whose clock leaves that hour out it is the
     * time that the clock jumps to.
     *
     * @param hour 0 to 23, of the person's own day
     * @param weekday of a weekly one: 1 = Monday to 7 = Sunday
     */
    public Optional<Instant> latestDue(Instant now, ZoneId zone, int hour, int weekday) {
        if (this == NONE) {
            return Optional.empty();
        }
        ZonedDateTime local = now.atZone(zone);
        java.time.LocalDate day = local.toLocalDate();
        if (this == WEEKLY) {
            day = day.with(TemporalAdjusters.previousOrSame(DayOfWeek.of(weekday)));
        }
        Instant due = day.atTime(LocalTime.of(hour, 0)).atZone(zone).toInstant();
        if (due.isAfter(now)) {
            due = day.minusDays(this == WEEKLY ? 7 : 1)
                    .atTime(LocalTime.of(hour, 0))
                    .atZone(zone)
                    .toInstant();
        }
        return Optional.of(due);
    }
}
