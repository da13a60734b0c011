package org.roundsman.planned;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * When planned work takes place. Changes of clocks, worked out by hand from the transitions of the tz database: Berlin
 * 2026-03-29T01:00Z (02:00 to 03:00) and 2026-10-25T01:00Z (03:00 to 02:00), New York 2026-03-08T07:00Z and
 * 2026-11-01T06:00Z; Lord Howe Island turns by half an hour; Kolkata never turns.
 */
class TimingTest {

    private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");

    private static Timing.Repeating daily(String start, int minutes, String first) {
        return plan(new Repetition.Daily(), start, minutes, first, null);
    }

    private static Timing.Repeating plan(
            Repetition how, String start, int minutes, String first, String last, String... skipped) {
        return Timing.Repeating.of(
                how,
                LocalTime.parse(start),
                Duration.ofMinutes(minutes),
                LocalDate.parse(first),
                last == null ? null : LocalDate.parse(last),
                Arrays.stream(skipped).map(LocalDate::parse).toList());
    }

    private static Stretch stretch(String from, String to) {
        return new Stretch(Instant.parse(from), Instant.parse(to));
    }

    /** A start in a gap comes later by the length of the gap; of one that comes twice the first counts. */
    @ParameterizedTest
    @CsvSource({
        // Berlin, gap: 02:30 is 03:30+02:00; the day before and after are ordinary
        "Europe/Berlin, 2026-03-28, 02:30, 2026-03-28T01:30:00Z",
        "Europe/Berlin, 2026-03-29, 02:30, 2026-03-29T01:30:00Z",
        "Europe/Berlin, 2026-03-29, 02:00, 2026-03-29T01:00:00Z",
        "Europe/Berlin, 2026-03-29, 03:00, 2026-03-29T01:00:00Z",
        "Europe/Berlin, 2026-03-30, 02:30, 2026-03-30T00:30:00Z",
        // Berlin, overlap: 02:30+02:00 and not 02:30+01:00
        "Europe/Berlin, 2026-10-24, 02:30, 2026-10-24T00:30:00Z",
        "Europe/Berlin, 2026-10-25, 02:30, 2026-10-25T00:30:00Z",
        "Europe/Berlin, 2026-10-25, 03:00, 2026-10-25T02:00:00Z",
        "Europe/Berlin, 2026-10-26, 02:30, 2026-10-26T01:30:00Z",
        // New York, gap: 02:30 is 03:30-04:00; overlap: 01:30-04:00
        "America/New_York, 2026-03-07, 02:30, 2026-03-07T07:30:00Z",
        "America/New_York, 2026-03-08, 02:30, 2026-03-08T07:30:00Z",
        "America/New_York, 2026-03-09, 02:30, 2026-03-09T06:30:00Z",
        "America/New_York, 2026-11-01, 01:30, 2026-11-01T05:30:00Z",
        "America/New_York, 2026-11-01, 02:30, 2026-11-01T07:30:00Z",
        "America/New_York, 2026-11-02, 01:30, 2026-11-02T06:30:00Z",
        // half an hour: on 2026-10-04 02:15+10:30 is skipped to 02:45+11:00
        "Australia/Lord_Howe, 2026-10-04, 02:15, 2026-10-03T15:45:00Z",
        "Asia/Kolkata, 2026-03-29, 02:30, 2026-03-28T21:00:00Z",
        "Asia/Kolkata, 2026-10-25, 02:30, 2026-10-24T21:00:00Z"
    })
    void aStartFollowsTheClockOfTheSite(String zone, String day, String start, String expected) {
        Stretch one = daily(start, 120, "2026-01-01").of(LocalDate.parse(day), ZoneId.of(zone));
        assertThat(one.from()).isEqualTo(Instant.parse(expected));
        assertThat(one.length()).isEqualTo(Duration.ofHours(2));
    }

    /** Two hours from 01:30 end at 04:30 when the clock skips an hour, and at 02:30 when it repeats one. */
    @Test
    void theLengthIsRealTime() {
        Timing.Repeating night = daily("01:30", 120, "2026-01-01");
        Instant spring = night.of(LocalDate.parse("2026-03-29"), BERLIN).to();
        Instant autumn = night.of(LocalDate.parse("2026-10-25"), BERLIN).to();
        assertThat(spring.atZone(BERLIN)).isEqualTo(ZonedDateTime.parse("2026-03-29T04:30+02:00[Europe/Berlin]"));
        assertThat(autumn.atZone(BERLIN)).isEqualTo(ZonedDateTime.parse("2026-10-25T02:30+01:00[Europe/Berlin]"));
    }

    /** An hour that comes twice has one window, not two. */
    @Test
    void anOverlapHasItOnce() {
        assertThat(daily("02:30", 60, "2026-10-24")
                        .between(Instant.parse("2026-10-24T22:00:00Z"), Instant.parse("2026-10-25T23:00:00Z"), BERLIN))
                .containsExactly(stretch("2026-10-25T00:30:00Z", "2026-10-25T01:30:00Z"));
    }

    @Test
    void oneCrossesMidnightAndTheEndOfTheMonth() {
        Timing.Repeating night =
                plan(new Repetition.MonthDay(Repetition.LAST), "22:00", 360, "2026-01-01", "2026-12-31");
        Instant may = ZonedDateTime.of(2026, 5, 1, 0, 0, 0, 0, BERLIN).toInstant();
        assertThat(night.between(may, may.plus(Duration.ofHours(1)), BERLIN))
                .containsExactly(stretch("2026-04-30T20:00:00Z", "2026-05-01T02:00:00Z"));
        assertThat(night.between(Instant.parse("2026-05-01T02:00:00Z"), Instant.parse("2026-05-02T00:00:00Z"), BERLIN))
                .isEmpty();
        assertThat(night.last(BERLIN)).map(Stretch::to).contains(Instant.parse("2027-01-01T03:00:00Z"));
    }

    @Test
    void firstLastAndSkippedDaysAreKept() {
        Timing.Repeating weekly = plan(
                new Repetition.Weekly(Set.of(DayOfWeek.MONDAY, DayOfWeek.THURSDAY)),
                "09:00",
                30,
                "2026-06-02",
                "2026-06-15",
                "2026-06-08");
        List<LocalDate> days = weekly.after(Instant.EPOCH, BERLIN, 10).stream()
                .map(one -> one.from().atZone(BERLIN).toLocalDate())
                .toList();
        assertThat(days)
                .containsExactly(
                        LocalDate.parse("2026-06-04"), LocalDate.parse("2026-06-11"), LocalDate.parse("2026-06-15"));
        assertThat(weekly.after(Instant.parse("2026-06-15T07:00:00Z"), BERLIN, 1))
                .as("begins at that very moment, so not after it")
                .isEmpty();
    }

    @Test
    void theLastIsTheLastThatHappens() {
        Repetition sundays = new Repetition.Weekly(Set.of(DayOfWeek.SUNDAY));
        assertThat(plan(sundays, "09:00", 30, "2026-06-01", "2026-06-30", "2026-06-28")
                        .last(BERLIN))
                .contains(stretch("2026-06-21T07:00:00Z", "2026-06-21T07:30:00Z"));
        assertThat(plan(sundays, "09:00", 30, "2026-06-01", "2026-06-06").last(BERLIN))
                .isEmpty();
        assertThat(plan(sundays, "09:00", 30, "2026-06-01", null).endless()).isTrue();
    }

    @Test
    void theNextOnesArePreviewed() {
        List<Stretch> next = plan(new Repetition.MonthWeekday(1, DayOfWeek.SUNDAY), "02:30", 90, "2026-01-01", null)
                .after(Instant.parse("2026-02-15T00:00:00Z"), ZoneId.of("America/New_York"), 5);
        assertThat(next)
                .extracting(Stretch::from)
                .containsExactly(
                        Instant.parse("2026-03-01T07:30:00Z"),
                        Instant.parse("2026-04-05T06:30:00Z"),
                        Instant.parse("2026-05-03T06:30:00Z"),
                        Instant.parse("2026-06-07T06:30:00Z"),
                        Instant.parse("2026-07-05T06:30:00Z"));
    }

    @Test
    void onceIsTheSameMomentsEverywhere() {
        Stretch when = stretch("2026-06-01T10:00:00Z", "2026-06-01T12:00:00Z");
        Timing once = new Timing.Once(when);
        assertThat(once.between(when.from().minusSeconds(60), when.from().plusSeconds(1), BERLIN))
                .containsExactly(when);
        assertThat(once.between(when.to(), when.to().plusSeconds(60), BERLIN)).isEmpty();
        assertThat(once.after(when.from().minusSeconds(1), BERLIN, 5)).containsExactly(when);
        assertThat(once.after(when.from(), BERLIN, 5)).isEmpty();
    }

    /**
     * What lies between two moments is what a walk over every single day of some years finds, in zones that turn by an
     * hour, by half an hour, not at all, and by a whole day (Apia left out 2011-12-30).
     */
    @Property(tries = 300)
    void noneIsMissedAndNoneIsInvented(
            @ForAll @IntRange(max = 1_439) int start,
            @ForAll @IntRange(min = 5, max = 4_320) int minutes,
            @ForAll @IntRange(max = 40_000) int fromHour,
            @ForAll @IntRange(min = 1, max = 2_000) int hours,
            @ForAll @IntRange(max = 4) int where) {
        ZoneId zone = ZoneId.of(
                List.of("Europe/Berlin", "America/New_York", "Australia/Lord_Howe", "Asia/Kolkata", "Pacific/Apia")
                        .get(where));
        LocalDate first = LocalDate.parse("2010-01-01");
        Timing.Repeating plan = Timing.Repeating.of(
                new Repetition.Weekly(Set.of(DayOfWeek.SUNDAY, DayOfWeek.WEDNESDAY, DayOfWeek.FRIDAY)),
                LocalTime.ofSecondOfDay(start * 60L),
                Duration.ofMinutes(minutes),
                first,
                null,
                List.of());
        Instant from = Instant.parse("2010-01-01T00:00:00Z").plus(Duration.ofHours(fromHour));
        Instant to = from.plus(Duration.ofHours(hours));
        List<Stretch> walked = first.datesUntil(first.plusYears(6))
                .filter(plan.how()::on)
                .map(day -> ZonedDateTime.of(day, plan.start(), zone).toInstant())
                .map(at -> new Stretch(at, at.plus(plan.length())))
                .filter(one -> one.from().isBefore(to) && one.to().isAfter(from))
                .toList();
        assertThat(plan.between(from, to, zone)).isEqualTo(walked);
        assertThat(plan.after(from, zone, 3))
                .isEqualTo(first.datesUntil(first.plusYears(6))
                        .filter(plan.how()::on)
                        .map(day -> plan.of(day, zone))
                        .filter(one -> one.from().isAfter(from))
                        .sorted(Comparator.comparing(Stretch::from))
                        .limit(3)
                        .toList());
    }
}
