package org.roundsman.reports.figures;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.YearMonth;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.Map;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.Severity;
import org.roundsman.reports.Handling;
import org.roundsman.reports.ReportSubject;
import org.roundsman.reports.figures.SampleEpisodes.Sample;

/** How alarms were dealt with, against figures worked out by hand. */
class DealingsTest {

    private static final ReportSubject JUNE = ReportSubject.of(1, "Pebblegate Dental", YearMonth.of(2026, 6));
    private static final Instant LATER = at("2026-07-03T06:00");

    private static Instant at(String local) {
        return LocalDateTime.parse(local).atZone(ZoneId.of("Europe/Berlin")).toInstant();
    }

    private static Sample alarm(long id, String raised, int minutes) {
        return SampleEpisodes.of(id, AlarmType.DEVICE_SILENT, OptionalLong.of(id))
                .lasts(at(raised), at(raised).plus(Duration.ofMinutes(minutes)));
    }

    private static Sample taken(Sample sample, int minutes) {
        return sample.taken(sample.began().plus(Duration.ofMinutes(minutes)));
    }

    private static Handling handling(Instant asOf, Sample... samples) {
        return Dealings.of(
                JUNE, asOf, Arrays.stream(samples).map(Sample::episode).toList());
    }

    @Test
    void theMedianOfAnEvenNumberIsTheMeanOfTheMiddleTwo() {
        Handling handling = handling(
                LATER,
                taken(alarm(1, "2026-06-01T00:00", 10), 4),
                taken(alarm(2, "2026-06-02T00:00", 20), 8),
                alarm(3, "2026-06-03T00:00", 40),
                taken(alarm(4, "2026-06-30T23:59", 400), 90));
        assertThat(handling.alarms()).isEqualTo(4);
        assertThat(handling.taken()).isEqualTo(3);
        assertThat(handling.cleared()).isEqualTo(4);
        assertThat(handling.toTake()).as("4 | 8 | 90").hasValue(Duration.ofMinutes(8));
        assertThat(handling.toClear()).as("10 | 20 40 | 400").hasValue(Duration.ofMinutes(30));
        assertThat(handling.longest()).hasValue(Duration.ofMinutes(400));
    }

    @Test
    void whatAnotherAlarmExplainsCountsWithIt() {
        Handling handling = handling(
                LATER,
                alarm(1, "2026-06-01T00:00", 10).with(Severity.CRITICAL),
                alarm(2, "2026-06-01T00:01", 10).explainedBy(1),
                alarm(3, "2026-06-01T00:01", 10).explainedBy(2),
                alarm(4, "2026-06-01T00:01", 10).explainedBy(999),
                alarm(5, "2026-06-05T00:00", 10).with(Severity.MINOR),
                alarm(6, "2026-06-06T00:00", 10).with(Severity.MINOR),
                alarm(7, "2026-06-07T00:00", 10).inPlannedWork());
        assertThat(handling.alarms()).isEqualTo(3);
        assertThat(handling.severities()).isEqualTo(Map.of("CRITICAL", 1, "MINOR", 2));
        assertThat(handling.explained())
                .as("not the one that our own blindness explains")
                .isEqualTo(2);
        assertThat(handling.planned()).isEqualTo(1);
    }

    @Test
    void anAlarmBelongsToTheMonthInWhichItWasRaisedByTheSitesClock() {
        Handling handling = handling(
                LATER,
                alarm(1, "2026-05-31T23:59", 10),
                alarm(2, "2026-06-01T00:00", 10),
                alarm(3, "2026-06-30T23:59", 10),
                alarm(4, "2026-07-01T00:00", 10));
        assertThat(handling.alarms()).isEqualTo(2);
    }

    @Test
    void whatCameAfterTheReportHadNotComeYet() {
        Handling handling = handling(at("2026-06-01T00:05"), taken(alarm(1, "2026-06-01T00:00", 10), 6));
        assertThat(handling.alarms()).isEqualTo(1);
        assertThat(handling.taken()).isZero();
        assertThat(handling.cleared()).isZero();
        assertThat(handling.toTake()).isEmpty();
        assertThat(handling.longest()).isEmpty();
    }

    @Test
    void withoutAlarmsThereAreNoTimes() {
        assertThat(handling(LATER).alarms()).isZero();
        assertThat(handling(LATER).toClear()).isEmpty();
    }
}
