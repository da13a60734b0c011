package org.roundsman.planned;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;

/** When planned work takes place, as it was entered: whatever ends it early is not looked at here. */
public sealed interface Timing {

    /** Those that share time with what lies between these moments, ascending, not cut to it. */
    List<Stretch> between(Instant from, Instant to, ZoneId zone);

    /** The next ones that begin after that moment, ascending; fewer where there are not so many. */
    List<Stretch> after(Instant at, ZoneId zone, int most);

    /** Whether it goes on for ever. */
    boolean endless();

    /** The very last one; empty where it goes on for ever, or where there is none at all. */
    Optional<Stretch> last(ZoneId zone);

    /** How long one lasts, in real elapsed time. */
    Duration length();

    /** One time only: the same moments wherever. */
    record Once(Stretch when) implements Timing {
        @Override
        public List<Stretch> between(Instant from, Instant to, ZoneId zone) {
            return when.within(from, to).isPresent() ? List.of(when) : List.of();
        }

        @Override
        public List<Stretch> after(Instant at, ZoneId zone, int most) {
            return when.from().isAfter(at) && most > 0 ? List.of(when) : List.of();
        }

        @Override
        public boolean endless() {
            return false;
        }

        @Override
        public Optional<Stretch> last(ZoneId zone) {
            return Optional.of(when);
        }

        @Override
        public Duration length() {
            return when.length();
        }
    }

    /**
     * Again and again, by the clock on the wall of each site.
     *
     * <p>When clocks change, the rules of {@link ZonedDateTime#of} hold: a start that the clock skips is later by as much
     * as it skips (02:30 becomes 03:30), and of a start that comes twice the first counts, once. The length is real elapsed
     * time: two hours that begin before a change take two hours, whatever the clock shows at their end.
     *
     * @param start by the clock of the site
     * @param length of each, real elapsed time
     * @param firstDay on which one may begin
     * @param lastDay on which one may begin, empty for no end
     * @param skipped days on which none begins
     */
    record Repeating(
            Repetition how,
            LocalTime start,
            Duration length,
            LocalDate firstDay,
            Optional<LocalDate> lastDay,
            SortedSet<LocalDate> skipped)
            implements Timing {

        /** Looking ahead further than this finds no more: only skipped days keep one from coming up each month. */
        private static final int FURTHEST_DAYS = 366 * 10;

        public Repeating {
            skipped = Collections.unmodifiableSortedSet(new TreeSet<>(skipped));
        }

        /** With days to skip in any order. */
        public static Repeating of(
                Repetition how,
                LocalTime start,
                Duration length,
                LocalDate firstDay,
                LocalDate lastDay,
                Collection<LocalDate> skipped) {
            return new Repeating(how, start, length, firstDay, Optional.ofNullable(lastDay), new TreeSet<>(skipped));
        }

        /** Whether one begins on that day. */
        public boolean on(LocalDate day) {
            return !day.isBefore(firstDay)
                    && lastDay.map(last -> !day.isAfter(last)).orElse(true)
                    && how.on(day)
                    && !skipped.contains(day);
        }

        /** The one of that day. */
        public Stretch of(LocalDate day, ZoneId zone) {
            Instant from = ZonedDateTime.of(day, start, zone).toInstant();
            return new Stretch(from, from.plus(length));
        }

        @Override
        public List<Stretch> between(Instant from, Instant to, ZoneId zone) {
            // One day more at both ends: a change of the clock, or of the date line, moves a start by up to a day.
            LocalDate day = later(
                    firstDay, from.minus(length).atZone(zone).toLocalDate().minusDays(1));
            LocalDate end = to.atZone(zone).toLocalDate().plusDays(1);
            List<Stretch> found = new ArrayList<>();
            for (; !day.isAfter(end); day = day.plusDays(1)) {
                if (on(day)) {
                    Stretch one = of(day, zone);
                    if (one.within(from, to).isPresent()) {
                        found.add(one);
                    }
                }
            }
            return found;
        }

        @Override
        public List<Stretch> after(Instant at, ZoneId zone, int most) {
            LocalDate day = later(firstDay, at.atZone(zone).toLocalDate().minusDays(1));
            LocalDate end = day.plusDays(FURTHEST_DAYS);
            end = lastDay.filter(end::isAfter).orElse(end);
            List<Stretch> found = new ArrayList<>();
            for (; !day.isAfter(end) && found.size() < most; day = day.plusDays(1)) {
                if (on(day) && of(day, zone).from().isAfter(at)) {
                    found.add(of(day, zone));
                }
            }
            return found;
        }

        @Override
        public boolean endless() {
            return lastDay.isEmpty();
        }

        @Override
        public Optional<Stretch> last(ZoneId zone) {
            LocalDate day = lastDay.orElse(firstDay.minusDays(1));
            while (!day.isBefore(firstDay) && !on(day)) {
                day = day.minusDays(1);
            }
            return day.isBefore(firstDay) ? Optional.empty() : Optional.of(of(day, zone));
        }

        private static LocalDate later(LocalDate a, LocalDate b) {
            return a.isAfter(b) ? a : b;
        }
    }
}
