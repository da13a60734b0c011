package org.roundsman.planned;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.format.TextStyle;
import java.time.temporal.TemporalAdjusters;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;

/** On which days something repeats. Days are those of the site's calendar (ISO 8601, proleptic Gregorian). */
public sealed interface Repetition {

    /** Stands for the last one, of days and of weekdays of a month, as the minus sign does in RFC 5545. */
    int LAST = -1;

    /** Whether it begins on that day. */
    boolean on(LocalDate day);

    /** In words, such as {@code every Mon, Thu}. */
    String words();

    /** Every day. */
    record Daily() implements Repetition {
        @Override
        public boolean on(LocalDate day) {
            return true;
        }

        @Override
        public String words() {
            return "every day";
        }
    }

    /**
     * On some days of every week.
     *
     * @param days none at all never happens
     */
    record Weekly(Set<DayOfWeek> days) implements Repetition {

        public Weekly {
            days = days.isEmpty() ? Set.of() : java.util.Collections.unmodifiableSet(EnumSet.copyOf(days));
        }

        @Override
        public boolean on(LocalDate day) {
            return days.contains(day.getDayOfWeek());
        }

        @Override
        public String words() {
            return "every "
                    + days.stream()
                            .sorted()
                            .map(d -> d.getDisplayName(TextStyle.SHORT, Locale.ENGLISH))
                            .collect(Collectors.joining(", "));
        }
    }

    /**
     * On one day of every month. A month without that day has none (as RFC 5545 has it).
     *
     * @param day 1 to 31, or {@link #LAST}
     */
    record MonthDay(int day) implements Repetition {
        @Override
        public boolean on(LocalDate date) {
            return date.getDayOfMonth() == (day == LAST ? date.lengthOfMonth() : day);
        }

        @Override
        public String words() {
            return day == LAST ? "the last day of every month" : "day " + day + " of every month";
        }
    }

    /**
     * On the first, second … or last of a weekday in every month.
     *
     * @param place 1 to 4, or {@link #LAST}
     */
    record MonthWeekday(int place, DayOfWeek weekday) implements Repetition {
        @Override
        public boolean on(LocalDate date) {
            return date.equals(date.with(TemporalAdjusters.dayOfWeekInMonth(place, weekday)));
        }

        @Override
        public String words() {
            String which =
                    switch (place) {
                        case 1 -> "first";
                        case 2 -> "second";
                        case 3 -> "third";
                        case 4 -> "fourth";
                        default -> "last";
                    };
            return "the " + which + " " + weekday.getDisplayName(TextStyle.FULL, Locale.ENGLISH) + " of every month";
        }
    }
}
