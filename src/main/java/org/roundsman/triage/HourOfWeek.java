package org.roundsman.triage;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;

/**
 * The same hour of the week in earlier weeks, by the clock of a site. In the week in which clocks are put forward an hour may
 * not exist: it is left out. In the one in which they are put back an hour may come twice: both belong to it.
 */
public final class HourOfWeek {

    private static final Duration QUARTER = Duration.ofMinutes(15);

    private HourOfWeek() {}

    /** One hour by the clock: no, one or two hours long. */
    public record Stretch(Instant from, Instant to) {

        /** Starts of the quarter hours that begin in it. */
        public List<Instant> quarters() {
            List<Instant> quarters = new ArrayList<>();
            long step = QUARTER.toSeconds();
            long first = -Math.floorDiv(-from.getEpochSecond(), step) * step;
            for (long at = first; at < to.getEpochSecond(); at += step) {
                quarters.add(Instant.ofEpochSecond(at));
            }
            return quarters;
        }
    }

    /** That hour in the given number of weeks before, the latest first; shorter where an hour did not exist. */
    public static List<Stretch> before(Instant moment, ZoneId zone, int weeks) {
        ZonedDateTime local = moment.atZone(zone);
        List<Stretch> stretches = new ArrayList<>();
        for (int back = 1; back <= weeks; back++) {
            Stretch stretch = hour(local.toLocalDate().minusWeeks(back), local.getHour(), zone);
            if (stretch.from().isBefore(stretch.to())) {
                stretches.add(stretch);
            }
        }
        return stretches;
    }

    /** The hour by the clock in which a moment lies. */
    public static Stretch of(Instant moment, ZoneId zone) {
        ZonedDateTime local = moment.atZone(zone);
        return hour(local.toLocalDate(), local.getHour(), zone);
    }

    private static Stretch hour(LocalDate day, int hour, ZoneId zone) {
        Instant from = day.atTime(hour, 0).atZone(zone).toInstant();
        Instant to = day.atTime(hour, 0).plusHours(1).atZone(zone).toInstant();
        return new Stretch(from, to);
    }
}
