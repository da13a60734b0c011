package org.roundsman.readings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.time.YearMonth;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.roundsman.measure.Condition;
import org.roundsman.planned.Stretch;

class AvailabilityTest {

    private static final Instant START = Instant.parse("2026-06-01T00:00:00Z");

    private static Span span(Instant from, Instant to, Condition condition) {
        return new Span(from, Optional.of(to), condition, Optional.empty());
    }

    private static Instant minute(double minute) {
        return START.plusMillis((long) (minute * 60_000));
    }

    /** Figures from the definition up / (up + down), unknown time being neither; worked out with exact arithmetic. */
    @ParameterizedTest
    @CsvSource({
        "43200, 43, 0, 99.9005",
        "43200, 200, 0, 99.5370",
        "44640, 90, 0, 99.7984",
        "43200, 45, 30, 99.8958",
        "43200, 43200, 0, 0.0000"
    })
    void shareIsAnsweringOfAnsweringAndSilent(int period, int silent, int unwatched, double percent) {
        List<Span> spans = List.of(
                span(START, minute(silent), Condition.SILENT),
                span(minute(silent), minute(silent + unwatched), Condition.UNWATCHED),
                span(minute(silent + unwatched), minute(period + 1), Condition.ANSWERING));
        Availability sums = Availability.of(
                silent + unwatched == period ? spans.subList(0, 1) : spans,
                START,
                minute(period),
                minute(period),
                List.of());
        assertThat(sums.share().orElseThrow() * 100).isCloseTo(percent, within(0.00005));
        assertThat(sums.unwatched()).isEqualTo(Duration.ofMinutes(unwatched));
        assertThat(sums.coverage().orElseThrow()).isCloseTo(1 - (double) unwatched / period, within(1e-12));
    }

    @Test
    void withoutAnyWatchedTimeThereIsNoFigure() {
        Availability sums = Availability.of(List.of(), START, minute(43_200), START, List.of());
        assertThat(sums.share()).isEmpty();
        assertThat(sums.coverage()).hasValue(0);
        assertThat(Availability.of(List.of(), START, START, START, List.of()).coverage())
                .isEmpty();
    }

    @Test
    void refusingCountsOnNeitherSideButIsWatched() {
        Availability sums = Availability.of(
                List.of(
                        span(START, minute(30), Condition.ANSWERING),
                        span(minute(30), minute(50), Condition.REFUSING),
                        span(minute(50), minute(60), Condition.SILENT)),
                START,
                minute(60),
                minute(60),
                List.of());
        assertThat(sums.share()).hasValue(0.75);
        assertThat(sums.refusing()).isEqualTo(Duration.ofMinutes(20));
        assertThat(sums.coverage()).hasValue(1);
    }

    private static Stretch planned(double from, double to) {
        return new Stretch(minute(from), minute(to));
    }

    /**
     * Planned work leaves both sides of the division. 45 minutes down and two hours planned in 30 days: 99.8955 %; all of
     * it planned: no figure. Worked out with exact arithmetic.
     */
    @Test
    void plannedWorkLeavesBothSides() {
        List<Span> spans = List.of(
                span(START, minute(45), Condition.SILENT),
                span(minute(45), minute(100), Condition.ANSWERING),
                span(minute(100), minute(220), Condition.SILENT),
                span(minute(220), minute(43_200), Condition.ANSWERING));
        Availability sums = Availability.of(spans, START, minute(43_200), minute(43_200), List.of(planned(100, 220)));
        assertThat(sums.share().orElseThrow() * 100).isCloseTo(99.8955, within(0.00005));
        assertThat(sums.planned()).isEqualTo(Duration.ofHours(2));
        assertThat(sums.coverage()).hasValue(1);
        Availability all = Availability.of(spans, START, minute(43_200), minute(43_200), List.of(planned(-5, 50_000)));
        assertThat(all.share()).isEmpty();
        assertThat(all.coverage()).isEmpty();
        assertThat(all.planned()).isEqualTo(Duration.ofDays(30));
    }

    /** Down from 10:00 to 11:00, planned from 10:30 to 12:00: 30 minutes down count. Overlapping windows count once. */
    @Test
    void anOutageCountsUntilTheWorkBegins() {
        List<Span> spans = List.of(
                span(START, minute(600), Condition.ANSWERING),
                span(minute(600), minute(660), Condition.SILENT),
                span(minute(660), minute(1_440), Condition.ANSWERING));
        Availability sums = Availability.of(
                spans,
                START,
                minute(1_440),
                minute(1_440),
                List.of(planned(690, 720), planned(630, 700), planned(640, 650)));
        assertThat(sums.silent()).isEqualTo(Duration.ofMinutes(30));
        assertThat(sums.planned()).isEqualTo(Duration.ofMinutes(90));
        assertThat(sums.answering()).isEqualTo(Duration.ofMinutes(1_440 - 30 - 90));
    }

    /** Time in which nobody looked is planned too, when it is: every moment stands in one place only. */
    @Test
    void unwatchedTimeOfPlannedWorkIsPlanned() {
        Availability sums = Availability.of(
                List.of(span(minute(30), minute(60), Condition.ANSWERING)),
                START,
                minute(60),
                minute(60),
                List.of(planned(20, 40)));
        assertThat(sums.unwatched()).isEqualTo(Duration.ofMinutes(20));
        assertThat(sums.planned()).isEqualTo(Duration.ofMinutes(20));
        assertThat(sums.answering()).isEqualTo(Duration.ofMinutes(20));
        assertThat(sums.coverage()).hasValue(0.5);
    }

    @Test
    void aSpanThatGoesOnReachesToTheNextRoundThatIsDue() {
        List<Span> open = List.of(new Span(START, Optional.empty(), Condition.ANSWERING, Optional.empty()));
        Availability sums = Availability.of(open, START, minute(60), minute(45), List.of());
        assertThat(sums.answering()).isEqualTo(Duration.ofMinutes(45));
        assertThat(sums.unwatched()).isEqualTo(Duration.ofMinutes(15));
    }

    /** Month lengths by java.time with the tzdata of the JDK; 743 and 745 hours at the changes of the clock. */
    @ParameterizedTest
    @CsvSource({
        "Europe/Berlin, 2026-03, 743",
        "Europe/Berlin, 2026-10, 745",
        "Europe/Berlin, 2026-02, 672",
        "America/New_York, 2026-03, 743",
        "America/New_York, 2026-11, 721",
        "Asia/Kolkata, 2026-03, 744"
    })
    void monthsAreTheSitesOwn(String zone, String month, int hours) {
        ZoneId id = ZoneId.of(zone);
        Instant from = YearMonth.parse(month).atDay(1).atStartOfDay(id).toInstant();
        Instant to =
                YearMonth.parse(month).plusMonths(1).atDay(1).atStartOfDay(id).toInstant();
        Instant back = from.plus(Duration.ofMinutes(44));
        Availability sums = Availability.of(
                List.of(span(from, back, Condition.SILENT), span(back, to, Condition.ANSWERING)),
                from,
                to,
                to,
                List.of());
        assertThat(sums.period()).isEqualTo(Duration.ofHours(hours));
        // 44 minutes of silence in Berlin's March 2026 are 99.9013 %, not the 99.9014 % of 744 hours
        double expected = 100 - 44 / (hours * 60.0) * 100;
        assertThat(sums.share().orElseThrow() * 100).isCloseTo(expected, within(1e-9));
        if (hours == 743) {
            assertThat(sums.share().orElseThrow() * 100).isCloseTo(99.9013, within(0.00005));
        }
    }
}
