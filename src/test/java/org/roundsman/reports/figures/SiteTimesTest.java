package org.roundsman.reports.figures;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.roundsman.measure.Condition;
import org.roundsman.reports.SiteFigures.Day;
import org.roundsman.reports.Watch;

/** Times of a site against figures worked out by hand from the definition up / (up + down), planned and unknown time being neither. */
class SiteTimesTest {

    private static final double LAST_DIGIT = 0.00005;

    private static Duration minutes(double minutes) {
        return Duration.ofSeconds(Math.round(minutes * 60));
    }

    private static Duration lengths(List<Day> days) {
        return days.stream().map(Day::length).reduce(Duration.ZERO, Duration::plus);
    }

    private static Watch together(List<Day> days) {
        return days.stream().map(Day::watch).reduce(Watch.NONE, Watch::plus);
    }

    /** 30 days are June, 31 days are May, in UTC. Worked out with exact arithmetic. */
    @ParameterizedTest
    @CsvSource({
        "2026-06, 43, 0, 0, 99.9005",
        "2026-06, 200, 0, 0, 99.5370",
        "2026-05, 90, 0, 0, 99.7984",
        "2026-06, 45, 120, 0, 99.8955",
        "2026-06, 45, 0, 30, 99.8958",
        "2026-06, 43200, 0, 0, 0.0000",
        "2026-06, 0, 43200, 0, ",
        "2026-06, 0, 0, 43200, "
    })
    void availabilityIsAnsweringOfAnsweringAndSilent(String month, int silent, int work, int unknown, Double percent) {
        SampleSite site = SampleSite.month("UTC", month).points(1);
        Instant worked = site.from().plus(minutes(silent));
        Instant lost = worked.plus(minutes(work));
        Instant back = lost.plus(minutes(unknown));
        if (silent > 0) {
            site.span(1, site.from(), worked, Condition.SILENT);
        }
        if (work > 0) {
            site.work(1, worked, lost).span(1, worked, lost, Condition.SILENT);
        }
        if (back.isBefore(site.to())) {
            site.span(1, back, site.to(), Condition.ANSWERING);
        }
        Watch whole = site.times().whole();
        assertThat(whole.silent()).isEqualTo(minutes(silent));
        assertThat(whole.planned()).isEqualTo(minutes(work));
        assertThat(whole.unwatched()).isEqualTo(minutes(unknown));
        if (percent == null) {
            assertThat(whole.share()).isEmpty();
        } else {
            assertThat(whole.share().orElseThrow() * 100).isCloseTo(percent, within(LAST_DIGIT));
        }
    }

    /** Lengths of months: java.time with the tzdata of the JDK. Lord Howe Island turns its clocks by half an hour. */
    @ParameterizedTest
    @CsvSource({
        "UTC, 2026-03, 44640, , 0",
        "Europe/Berlin, 2026-03, 44580, 2026-03-29, 23",
        "Europe/Berlin, 2026-10, 44700, 2026-10-25, 25",
        "Europe/Berlin, 2026-02, 40320, , 0",
        "Europe/Berlin, 2028-02, 41760, , 0",
        "America/New_York, 2026-03, 44580, 2026-03-08, 23",
        "America/New_York, 2026-11, 43260, 2026-11-01, 25",
        "America/New_York, 2026-10, 44640, , 0",
        "Asia/Kolkata, 2026-03, 44640, , 0",
        "Australia/Lord_Howe, 2026-04, 43230, 2026-04-05, 24.5",
        "Australia/Lord_Howe, 2026-10, 44610, 2026-10-04, 23.5"
    })
    void monthsAndDaysAreTheSitesOwn(String zone, String month, int length, LocalDate turned, double hours) {
        SampleSite site = SampleSite.month(zone, month).points(1).silentOnly(1);
        List<Day> days = site.times().days();
        assertThat(site.times().whole().length()).isEqualTo(minutes(length));
        assertThat(days).hasSize(YearMonth.parse(month).lengthOfMonth());
        assertThat(lengths(days)).isEqualTo(minutes(length));
        assertThat(together(days)).isEqualTo(site.times().whole());
        for (Day day : days) {
            double expected = day.date().equals(turned) ? hours : 24;
            assertThat(day.length()).as("%s", day.date()).isEqualTo(minutes(expected * 60));
        }
    }

    /** With 744 hours it would be 99.9014 %. */
    @Test
    void aMonthWith743HoursHas743Hours() {
        SampleSite site = SampleSite.month("Europe/Berlin", "2026-03")
                .points(1)
                .silentOnly(1, "2026-03-29T12:00", "2026-03-29T12:44");
        assertThat(site.times().whole().share().orElseThrow() * 100).isCloseTo(99.9013, within(LAST_DIGIT));
        Day turned = site.times().days().get(28);
        assertThat(turned.watch().silent()).isEqualTo(minutes(44));
        assertThat(turned.watch().length()).isEqualTo(Duration.ofHours(23));
    }

    /** Down from 10:00 to 11:00, planned from 10:30 to 12:00: 30 minutes down count. */
    @Test
    void anOutageCountsUntilTheWorkBegins() {
        SampleSite site = SampleSite.month("Europe/Berlin", "2026-06")
                .points(2)
                .silentOnly(1, "2026-06-10T10:00", "2026-06-10T11:00")
                .silentOnly(2)
                .work(0, "2026-06-10T10:30", "2026-06-10T12:00");
        Watch whole = site.times().whole();
        assertThat(whole.silent()).isEqualTo(minutes(30));
        assertThat(whole.planned()).as("of both").isEqualTo(minutes(180));
        assertThat(site.times().silences())
                .containsExactly(
                        new Silence(1, site.at("2026-06-10T10:00"), site.at("2026-06-10T10:30"), false, false));
    }

    /** 10:00 to 10:30 and 10:20 to 10:50: the site suffers for 50 minutes, its access points for 60 together. */
    @Test
    void anOutageLastsForTheUnionAndItsSilenceIsTheSum() {
        SampleSite site = SampleSite.month("Europe/Berlin", "2026-06")
                .points(2)
                .silentOnly(1, "2026-06-10T10:00", "2026-06-10T10:30")
                .silentOnly(2, "2026-06-10T10:20", "2026-06-10T10:50");
        List<Gone> gone = Gone.of(site.times().silences(), silence -> Optional.empty());
        assertThat(gone).hasSize(1);
        assertThat(Duration.between(gone.get(0).from(), gone.get(0).to())).isEqualTo(minutes(50));
        assertThat(gone.get(0).silence()).isEqualTo(minutes(60));
        assertThat(site.times().whole().silent()).isEqualTo(minutes(60));
    }

    @Test
    void whatNobodyWatchedIsNoFigure() {
        SampleSite site = SampleSite.month("Europe/Berlin", "2026-10").points(3);
        Watch whole = site.times().whole();
        assertThat(whole.share()).isEmpty();
        assertThat(whole.coverage()).hasValue(0);
        assertThat(whole.unwatched()).isEqualTo(Duration.ofHours(3 * 745));
        assertThat(site.times().silences()).isEmpty();
        assertThat(site.times().days())
                .allSatisfy(day -> assertThat(day.watch().share()).isEmpty());
    }

    @Test
    void aSiteThatOpenedWithinTheMonthCountsFromThen() {
        SampleSite site = SampleSite.month("Europe/Berlin", "2026-10")
                .pointSince(1, "2026-10-16T12:00")
                .pointSince(2, "2026-10-31T00:00")
                .span(1, "2026-10-16T12:00", "2026-10-16T18:00", Condition.SILENT)
                .span(1, "2026-10-16T18:00", "2026-11-02T00:00", Condition.ANSWERING);
        Watch whole = site.times().whole();
        assertThat(whole.length())
                .as("15.5 days and the hour of the 25th; one day")
                .isEqualTo(Duration.ofHours(15 * 24 + 12 + 1 + 24));
        assertThat(whole.silent()).isEqualTo(Duration.ofHours(6));
        assertThat(whole.unwatched()).isEqualTo(Duration.ofHours(24));
        assertThat(site.times().since()).hasValue(LocalDate.parse("2026-10-16"));
        assertThat(site.times().serviceHours()).isEqualTo(Duration.ofHours(15 * 24 + 12 + 1));
        assertThat(site.times().days().get(14).watch()).isEqualTo(Watch.NONE);
        assertThat(site.times().days().get(15).watch().length()).isEqualTo(Duration.ofHours(12));
        assertThat(site.times().silences().get(0).begunBefore()).isFalse();
    }

    @Test
    void aSiteWithAnOlderAccessPointHasNoFirstDay() {
        SampleSite site = SampleSite.month("UTC", "2026-10").points(1).pointSince(2, "2026-10-16T12:00");
        assertThat(site.times().since()).isEmpty();
        assertThat(site.times().serviceHours()).isEqualTo(Duration.ofHours(744));
    }

    @Test
    void plannedWorkAcrossMidnightAndTheEndOfTheMonthIsPartedThere() {
        SampleSite site = SampleSite.month("America/New_York", "2026-11")
                .points(1)
                .silentOnly(1)
                .work(0, "2026-10-31T23:00", "2026-11-01T00:30")
                .work(1, "2026-11-10T22:00", "2026-11-11T01:00")
                .work(0, "2026-11-30T23:15", "2026-12-01T03:00");
        List<Day> days = site.times().days();
        assertThat(days.get(0).watch().planned()).isEqualTo(minutes(30));
        assertThat(days.get(9).watch().planned()).isEqualTo(minutes(120));
        assertThat(days.get(10).watch().planned()).isEqualTo(minutes(60));
        assertThat(days.get(29).watch().planned()).isEqualTo(minutes(45));
        assertThat(site.times().whole().planned()).isEqualTo(minutes(255));
    }

    /**
     * Tuesdays 08:00 to 18:00; June 2026 has five. Six hours of the silence lie in them, one of them in work on the site. The
     * work on the access point alone takes nothing off the hours of the site.
     */
    @Test
    void serviceHoursAreThoseOfTheSiteWithoutItsWork() {
        SampleSite site = SampleSite.month("Europe/Berlin", "2026-06")
                .points(1)
                .open(2, "08:00", "18:00")
                .silentOnly(1, "2026-06-09T12:00", "2026-06-09T20:00")
                .work(0, "2026-06-09T16:00", "2026-06-09T17:00")
                .work(1, "2026-06-16T07:00", "2026-06-16T09:00");
        assertThat(site.times().serviceHours()).isEqualTo(Duration.ofHours(49));
        Watch service = site.times().service();
        assertThat(service.length()).isEqualTo(Duration.ofHours(50));
        assertThat(service.silent()).isEqualTo(Duration.ofHours(5));
        assertThat(service.planned()).isEqualTo(Duration.ofHours(2));
        assertThat(service.answering()).isEqualTo(Duration.ofHours(43));
    }

    @Test
    void withoutServiceHoursTheyAreAllHours() {
        SampleSite site = SampleSite.month("Europe/Berlin", "2026-03")
                .points(2)
                .silentOnly(1, "2026-03-02T01:00", "2026-03-02T03:00")
                .silentOnly(2);
        assertThat(site.times().service()).isEqualTo(site.times().whole());
        assertThat(site.times().serviceHours()).isEqualTo(Duration.ofHours(743));
    }

    @Test
    void aMonthThatGoesOnEndsAtTheMomentOfTheReport() {
        SampleSite site = SampleSite.month("Europe/Berlin", "2026-06")
                .points(1)
                .asOf("2026-06-10T10:20")
                .span(1, "2026-05-31T20:00", "2026-06-01T02:00", Condition.SILENT)
                .span(1, "2026-06-01T02:00", "2026-06-10T10:00", Condition.ANSWERING)
                .span(1, "2026-06-10T10:00", "2026-06-10T10:21", Condition.SILENT);
        assertThat(site.times().whole().length()).isEqualTo(minutes(9 * 1_440 + 620));
        assertThat(site.times().days()).hasSize(10);
        assertThat(site.times().days().get(9).length()).isEqualTo(minutes(620));
        assertThat(site.times().silences())
                .containsExactly(
                        new Silence(1, site.from(), site.at("2026-06-01T02:00"), true, false),
                        new Silence(1, site.at("2026-06-10T10:00"), site.to(), false, true));
    }

    @Test
    void aStretchInTheFutureHasNoLength() {
        SampleSite site = SampleSite.month("Europe/Berlin", "2026-06").points(1).asOf("2026-06-01T00:00");
        assertThat(site.times().whole()).isEqualTo(Watch.NONE);
        assertThat(site.times().service()).isEqualTo(Watch.NONE);
        assertThat(site.times().days()).isEmpty();
        assertThat(site.times().silences()).isEmpty();
    }
}
