package org.roundsman.planned;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/** Days of repetitions, against the examples of RFC 5545, section 3.8.5.3 (from memory), and counted by hand. */
class RepetitionTest {

    private static List<String> days(Repetition how, String from, String to) {
        return LocalDate.parse(from)
                .datesUntil(LocalDate.parse(to))
                .filter(how::on)
                .map(LocalDate::toString)
                .toList();
    }

    /** "Monthly on the first Friday until December 24, 1997". */
    @Test
    void theFirstFridayOfEveryMonth() {
        assertThat(days(new Repetition.MonthWeekday(1, DayOfWeek.FRIDAY), "1997-09-02", "1997-12-24"))
                .containsExactly("1997-09-05", "1997-10-03", "1997-11-07", "1997-12-05");
    }

    /** "An example where an invalid date (i.e., February 30) is ignored". */
    @Test
    void aMonthWithoutThatDayHasNone() {
        assertThat(days(new Repetition.MonthDay(30), "2007-01-15", "2007-04-01"))
                .containsExactly("2007-01-30", "2007-03-30");
    }

    /** The last days out of "monthly on the first and last day of the month for 10 occurrences". */
    @Test
    void theLastDayOfEveryMonth() {
        assertThat(days(new Repetition.MonthDay(Repetition.LAST), "1997-09-02", "1998-02-02"))
                .containsExactly("1997-09-30", "1997-10-31", "1997-11-30", "1997-12-31", "1998-01-31");
        assertThat(days(new Repetition.MonthDay(Repetition.LAST), "2028-02-01", "2028-03-01"))
                .containsExactly("2028-02-29");
    }

    /** "Weekly on Tuesday and Thursday for five weeks". */
    @Test
    void someDaysOfEveryWeek() {
        assertThat(days(
                        new Repetition.Weekly(Set.of(DayOfWeek.THURSDAY, DayOfWeek.TUESDAY)),
                        "1997-09-02",
                        "1997-10-07"))
                .containsExactly(
                        "1997-09-02",
                        "1997-09-04",
                        "1997-09-09",
                        "1997-09-11",
                        "1997-09-16",
                        "1997-09-18",
                        "1997-09-23",
                        "1997-09-25",
                        "1997-09-30",
                        "1997-10-02");
    }

    @Test
    void theyAreSaidInPlainWords() {
        assertThat(new Repetition.Daily().words()).isEqualTo("every day");
        assertThat(new Repetition.Weekly(Set.of(DayOfWeek.THURSDAY, DayOfWeek.MONDAY)).words())
                .isEqualTo("every Mon, Thu");
        assertThat(new Repetition.MonthWeekday(1, DayOfWeek.SUNDAY).words())
                .isEqualTo("the first Sunday of every month");
        assertThat(new Repetition.MonthWeekday(-1, DayOfWeek.SUNDAY).words())
                .isEqualTo("the last Sunday of every month");
        assertThat(new Repetition.MonthDay(-1).words()).isEqualTo("the last day of every month");
    }

    /** The nth of a weekday has n-1 of the same before it in its month; the last has none after it. */
    @Property(tries = 300)
    void weekdaysOfAMonthAreCounted(
            @ForAll @IntRange(max = 40_000) int day,
            @ForAll @IntRange(min = 1, max = 4) int place,
            @ForAll DayOfWeek weekday) {
        LocalDate date = LocalDate.ofEpochDay(day);
        long before = date.withDayOfMonth(1)
                .datesUntil(date)
                .filter(d -> d.getDayOfWeek() == weekday)
                .count();
        boolean is = date.getDayOfWeek() == weekday;
        assertThat(new Repetition.MonthWeekday(place, weekday).on(date)).isEqualTo(is && before == place - 1);
        boolean last = is && date.plusDays(7).getMonth() != date.getMonth();
        assertThat(new Repetition.MonthWeekday(Repetition.LAST, weekday).on(date))
                .isEqualTo(last);
    }
}
