package org.roundsman.alarms.quality;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.QualityReport;
import org.roundsman.alarms.QualityReport.Flood;
import org.roundsman.alarms.QualityReport.Share;
import org.roundsman.alarms.Severity;

/** Bounds of ISA-18.2, IEC 62682 and EEMUA 191, as known from memory, and figures worked out by hand. */
class AppraisalTest {

    private static final Instant START = Instant.parse("2026-11-02T00:00:00Z");
    private static final Duration DAY = Duration.ofDays(1);

    private static List<Instant> at(int... seconds) {
        return Arrays.stream(seconds).mapToObj(START::plusSeconds).toList();
    }

    private static Raised raised(long alarm, Instant at, Duration lasts, Severity severity) {
        return new Raised(
                alarm,
                alarm % 2 == 0 ? AlarmType.DEVICE_SILENT : AlarmType.RADIO_OFF,
                alarm,
                "ap-" + alarm,
                "alarm " + alarm,
                at,
                Optional.ofNullable(lasts).map(at::plus),
                severity,
                true);
    }

    private static QualityReport report(List<Raised> episodes, int days, int technicians) {
        return Appraisal.of(episodes, START, START.plus(DAY.multipliedBy(days)), technicians);
    }

    @ParameterizedTest
    @CsvSource({"'0 20 59', true", "'0 20 61', false", "'0 30 61 75', true", "'0 20', false", "'0 30 60', true"})
    void threeRaisesInAMinuteChatter(String seconds, boolean chatters) {
        int[] all =
                Arrays.stream(seconds.split(" ")).mapToInt(Integer::parseInt).toArray();
        assertThat(Crowds.chatters(at(all))).isEqualTo(chatters);
    }

    @Test
    void elevenInTenMinutesAreAFloodAndTenAreNot() {
        Instant end = START.plus(DAY);
        assertThat(Crowds.floods(at(IntStream.range(0, 10).map(n -> n * 60).toArray()), 1, end))
                .isEmpty();
        List<Flood> floods =
                Crowds.floods(at(IntStream.range(0, 11).map(n -> n * 60).toArray()), 1, end);
        // begins with the eleventh at 600 s; the seventh, of 360 s, is the one whose leaving at 960 s makes four of
        // five
        assertThat(floods).containsExactly(new Flood(START.plusSeconds(600), START.plusSeconds(960), 11));
    }

    @Test
    void aFloodGoesOnWhileFiveAreLeftAndIsForEachTechnician() {
        List<Instant> moments = new ArrayList<>(at(IntStream.range(0, 11).toArray()));
        IntStream.range(1, 30).forEach(n -> moments.add(START.plusSeconds(n * 120L)));
        List<Flood> floods = Crowds.floods(moments, 1, START.plus(DAY));
        assertThat(floods).hasSize(1);
        assertThat(floods.get(0).to()).isEqualTo(START.plusSeconds(29 * 120 - 3 * 120 + 600 - 120));
        assertThat(Crowds.floods(moments, 2, START.plus(DAY))).isEmpty();
        assertThat(Crowds.floods(moments, 1, START.plusSeconds(700)).get(0).to())
                .isEqualTo(START.plusSeconds(700));
    }

    /** 144 per day are 6 per hour and 1 per ten minutes. */
    @Test
    void ratesAreForOneTechnician() {
        List<Raised> even = IntStream.range(0, 288)
                .mapToObj(n -> raised(n, START.plusSeconds(n * 300L), Duration.ofHours(1), Severity.MINOR))
                .toList();
        QualityReport.Load load = report(even, 1, 2).load();
        assertThat(load.alarms()).isEqualTo(288);
        assertThat(load.perDay()).isCloseTo(144, within(1e-9));
        assertThat(load.perHour()).isCloseTo(6, within(1e-9));
        assertThat(load.perTenMinutes()).isCloseTo(1, within(1e-9));
        assertThat(load.largest()).isEqualTo(1.5);
        assertThat(load.crowdedHours()).isZero();
    }

    @Test
    void hoursAndPeriodsWithTooManyAreCounted() {
        List<Raised> burst = IntStream.range(0, 31)
                .mapToObj(n -> raised(n, START.plusSeconds(n * 100L), Duration.ofHours(1), Severity.MINOR))
                .toList();
        QualityReport report = report(burst, 1, 1);
        assertThat(report.load().crowdedHours()).isEqualTo(1);
        assertThat(report.load().crowdedHoursShare()).isCloseTo(1 / 24.0, within(1e-9));
        assertThat(report.load().crowdedPeriods()).isZero();
        assertThat(report(burst.subList(0, 30), 1, 1).load().crowdedHours()).isZero();
        List<Raised> quick = IntStream.range(0, 11)
                .mapToObj(n -> raised(n, START.plusSeconds(n), Duration.ofHours(1), Severity.MINOR))
                .toList();
        assertThat(report(quick, 1, 1).load().crowdedPeriods()).isCloseTo(1 / 144.0, within(1e-9));
    }

    @Test
    void theLoudestComeFirstWithTheirShares() {
        List<Raised> episodes = new ArrayList<>();
        IntStream.range(0, 6)
                .forEach(n ->
                        episodes.add(raised(2, START.plusSeconds(n * 1000L), Duration.ofSeconds(500), Severity.MAJOR)));
        IntStream.range(0, 4)
                .forEach(n -> episodes.add(
                        raised(3, START.plusSeconds(n * 1000L + 7), Duration.ofSeconds(60), Severity.CRITICAL)));
        QualityReport report = report(episodes, 1, 1);
        assertThat(report.rules())
                .containsExactly(
                        new Share(0, AlarmType.DEVICE_SILENT.title(), 6, 0.6),
                        new Share(0, AlarmType.RADIO_OFF.title(), 4, 0.4));
        assertThat(report.devices()).extracting(Share::id).containsExactly(2L, 3L);
        assertThat(report.topAlarms()).isCloseTo(1, within(1e-9));
        assertThat(report.mix()).isEqualTo(new QualityReport.Mix(1 - 0.4 - 0.6, 0.6, 0.4));
        assertThat(report.noise().fleeting()).isEqualTo(4);
        assertThat(report.noise().chattering()).isEmpty();
    }

    @Test
    void whatAnotherExplainsAndWhatWasPlannedDoesNotCount() {
        Raised plain = raised(2, START, Duration.ofHours(1), Severity.MAJOR);
        Raised explained = new Raised(3, plain.type(), 3, "", "", START, Optional.empty(), Severity.MAJOR, false);
        QualityReport report = report(List.of(plain, explained), 7, 1);
        assertThat(report.load().alarms()).isEqualTo(1);
        assertThat(report.stale().worstDay()).isZero();
    }

    @Test
    void whatIsActiveForMoreThanADayIsStale() {
        List<Raised> episodes = List.of(
                raised(2, START.minus(DAY.multipliedBy(3)), DAY.multipliedBy(4), Severity.MAJOR),
                raised(4, START.plus(DAY), null, Severity.MAJOR),
                raised(6, START, DAY, Severity.MAJOR));
        QualityReport report = report(episodes, 7, 1);
        assertThat(report.stale().now()).extracting(Share::id).containsExactly(4L);
        assertThat(report.stale().worstDay()).isEqualTo(1);
        assertThat(report(List.of(), 7, 1).load().perDay()).isZero();
    }
}
