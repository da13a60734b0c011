package org.roundsman.planned;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.zone.ZoneOffsetTransition;
import java.util.List;

/**
 * One time that planned work will take place, and what a change of the clock does to it.
 *
 * @param zone of the site
 */
public record Occurrence(Stretch when, ZoneId zone, Turn turn) {

    /** What a change of the clock does. */
    public enum Turn {
        /** None on its day. */
        NONE,
        /** The clock skips the start that was entered, so that it begins later by the clock. */
        START_SKIPPED,
        /** The clock shows the start twice; the first counts. */
        START_TWICE,
        /** The clock is turned while it goes on. */
        DURING,
        /** The clock is turned on its first day, but not while it goes on. */
        THAT_DAY
    }

    /** The next of a timing that begin after that moment; fewer where there are not so many. */
    public static List<Occurrence> next(Timing timing, Instant at, ZoneId zone, int most) {
        LocalTime start = timing instanceof Timing.Repeating repeating ? repeating.start() : null;
        return timing.after(at, zone, most).stream()
                .map(when -> new Occurrence(when, zone, turn(when, zone, start)))
                .toList();
    }

    private static Turn turn(Stretch when, ZoneId zone, LocalTime start) {
        LocalDateTime local = LocalDateTime.ofInstant(when.from(), zone);
        if (start != null && !local.toLocalTime().equals(start)) {
            return Turn.START_SKIPPED;
        }
        if (zone.getRules().getValidOffsets(local).size() > 1) {
            return Turn.START_TWICE;
        }
        ZoneOffsetTransition next = zone.getRules().nextTransition(when.from());
        if (next != null && next.getInstant().isBefore(when.to())) {
            return Turn.DURING;
        }
        Instant day = local.toLocalDate().atStartOfDay(zone).toInstant();
        Instant end = local.toLocalDate().plusDays(1).atStartOfDay(zone).toInstant();
        ZoneOffsetTransition first = zone.getRules().nextTransition(day.minusNanos(1));
        return first != null && first.getInstant().isBefore(end) ? Turn.THAT_DAY : Turn.NONE;
    }
}
