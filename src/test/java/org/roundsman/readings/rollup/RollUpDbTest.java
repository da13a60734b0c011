package org.roundsman.readings.rollup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.roundsman.readings.ReadingsFixture.answered;
import static org.roundsman.readings.ReadingsFixture.silent;

import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.roundsman.measure.Metric;
import org.roundsman.measure.Reading;
import org.roundsman.readings.ReadingsFixture;
import org.roundsman.readings.Series;
import org.roundsman.readings.store.BatchStore;
import org.roundsman.readings.store.Partitions;
import org.roundsman.testing.TestDatabase;

class RollUpDbTest {

    private static final Instant TEN = Instant.parse("2026-11-20T10:00:00Z");
    private static final Instant NEXT_DAY = Instant.parse("2026-11-22T00:00:00Z");
    private static final Duration QUARTER = Duration.ofMinutes(15);

    private DataSource source;
    private ReadingsFixture fixture;
    private BatchStore store;
    private long site;
    private long device;

    @BeforeEach
    void database() {
        source = TestDatabase.fresh("rollup");
        fixture = new ReadingsFixture(source);
        store = new BatchStore(source, Clock.systemUTC());
        site = fixture.site(fixture.customer("Hotel Brackwater"), "House", "Europe/Berlin");
        device = fixture.accessPoint(site, "lobby");
    }

    private void rollUp(Instant now) throws SQLException {
        new RollUp(source, Clock.fixed(now, ZoneOffset.UTC), QUARTER).run();
    }

    private List<Series.Point> clients(Duration step) {
        return ReadingsFixture.history(source)
                .ofDevice(device, Metric.CLIENTS, TEN, TEN.plus(Duration.ofDays(2)), step)
                .points();
    }

    @Test
    void aQuarterHourKeepsCountLeastMeanAndGreatest() throws SQLException {
        store.store(List.of(
                answered(device, TEN, 4, 10),
                answered(device, TEN.plusSeconds(60), 10, 20),
                silent(device, TEN.plusSeconds(120)),
                answered(device, TEN.plusSeconds(899), 7, 60),
                answered(device, TEN.plusSeconds(900), 100, 90)));
        rollUp(NEXT_DAY);
        // by hand: (4 + 10 + 7) / 3; the unanswered round is missing, not zero
        assertThat(clients(QUARTER))
                .containsExactly(
                        new Series.Point(TEN, 3, 4, 7, 10), new Series.Point(TEN.plus(QUARTER), 1, 100, 100, 100));
        // by hand: (3 x 7 + 1 x 100) / 4
        assertThat(clients(Duration.ofMinutes(30))).containsExactly(new Series.Point(TEN, 4, 4, 30.25, 100));
        assertThat(ReadingsFixture.history(source)
                        .ofRadio(device, 2, Metric.UTILISATION, TEN, NEXT_DAY, QUARTER)
                        .points())
                .first()
                .isEqualTo(new Series.Point(TEN, 3, 10, 30, 60));
        assertThat(ReadingsFixture.history(source)
                        .ofNetwork(device, "Staff", TEN, NEXT_DAY, QUARTER)
                        .points())
                .first()
                .isEqualTo(new Series.Point(TEN, 3, 4, 7, 10));
        assertThat(ReadingsFixture.history(source)
                        .ofDevice(device, Metric.MEMORY, TEN, NEXT_DAY, QUARTER)
                        .points())
                .isEmpty();
        assertThat(fixture.count("rollup_mark")).isZero();
    }

    @Test
    void theSiteHoldsClientsTheBusiestRadioAndConditionSeconds() throws SQLException {
        long other = fixture.accessPoint(site, "bar");
        List<Reading> readings = new ArrayList<>();
        for (int minute = 0; minute < 16; minute++) {
            readings.add(answered(device, TEN.plusSeconds(60L * minute), 6, 40));
            Instant at = TEN.plusSeconds(60L * minute);
            readings.add(minute < 5 ? answered(other, at, 10, 70) : silent(other, at));
        }
        store.store(readings);
        rollUp(NEXT_DAY);
        assertThat(fixture.rows("select clients_mean, utilisation_max, answering_s, silent_s, refusing_s, covered_s"
                        + " from quarter_site where at = '2026-11-20 10:00+00'"))
                .containsExactly(List.of(16f, 70f, 900 + 300, 600, 0, 1800));
    }

    @Test
    void theQuarterHourThatGoesOnIsThereAndCoversWhatHasGoneBy() throws SQLException {
        store.store(List.of(answered(device, TEN, 6, 40), answered(device, TEN.plusSeconds(60), 6, 40)));
        rollUp(TEN.plusSeconds(90));
        assertThat(fixture.rows("select answering_s, covered_s from quarter_site"))
                .containsExactly(List.of(90, 90));
        store.store(List.of(answered(device, TEN.plusSeconds(120), 9, 40)));
        rollUp(TEN.plusSeconds(130));
        assertThat(clients(QUARTER)).containsExactly(new Series.Point(TEN, 3, 6, 7, 9));
    }

    @Test
    void silenceFoundInTheNextQuarterHourIsCountedBackToItsStart() throws SQLException {
        store.store(List.of(
                answered(device, TEN.plusSeconds(780), 6, 40),
                silent(device, TEN.plusSeconds(840)),
                silent(device, TEN.plusSeconds(899))));
        rollUp(TEN.plusSeconds(900));
        assertThat(fixture.rows("select answering_s, silent_s from quarter_site where at = '2026-11-20 10:00+00'"))
                .containsExactly(List.of(120, 0));
        store.store(List.of(silent(device, TEN.plusSeconds(960))));
        rollUp(TEN.plusSeconds(961));
        assertThat(fixture.rows("select answering_s, silent_s from quarter_site where at = '2026-11-20 10:00+00'"))
                .containsExactly(List.of(60, 60));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 22, 333})
    void anyOrderRepeatsLateReadingsAndRunsGiveWhatSqlGivesOverAllRawReadings(long seed) throws SQLException {
        Random random = new Random(seed);
        List<Reading> readings = new ArrayList<>();
        for (int i = 0; i < 300; i++) {
            Instant at = TEN.plusSeconds(47L * i);
            readings.add(
                    random.nextInt(5) == 0
                            ? silent(device, at)
                            : answered(device, at, random.nextInt(90), 100.0 * i / 300));
        }
        Collections.shuffle(readings, random);
        readings.addAll(readings.subList(0, 60));
        for (int from = 0; from < readings.size(); from += 40) {
            store.store(readings.subList(from, Math.min(readings.size(), from + 40)));
            if (random.nextBoolean()) {
                rollUp(NEXT_DAY);
            }
        }
        rollUp(NEXT_DAY);
        rollUp(NEXT_DAY);
        assertThat(fixture.rows("select at, clients_n, clients_min, clients_mean, clients_max, round_trip_n"
                        + " from quarter_device order by at"))
                .isEqualTo(
                        fixture.rows("select date_bin('15 minutes', at, '2000-01-01 00:00+00') b, count(clients)::int2,"
                                + " min(clients)::real, avg(clients)::real, max(clients)::real, count(round_trip)::int2"
                                + " from reading_device group by b having count(clients) > 0 order by b"));
        assertThat(fixture.rows("select at, number, utilisation_mean from quarter_radio order by at, number"))
                .isEqualTo(fixture.rows("select date_bin('15 minutes', at, '2000-01-01 00:00+00') b, number,"
                        + " avg(utilisation)::real from reading_radio group by b, number order by b, number"));
        List<Object> day =
                fixture.rows("select clients_n, clients_mean from day_device").get(0);
        List<Object> all = fixture.rows("select count(clients)::int, avg(clients)::float8 from reading_device")
                .get(0);
        assertThat(day.get(0)).isEqualTo(all.get(0));
        assertThat((Float) day.get(1)).isCloseTo(((Double) all.get(1)).floatValue(), within(1e-3f));
    }

    /** Changes of the clock by the tz database: Berlin 2026-03-29 and 2026-10-25, New York 2026-03-08 and 2026-11-01. */
    @ParameterizedTest
    @CsvSource({
        "Europe/Berlin, 2026-03-29, 23",
        "Europe/Berlin, 2026-10-25, 25",
        "Europe/Berlin, 2026-10-26, 24",
        "America/New_York, 2026-03-08, 23",
        "America/New_York, 2026-11-01, 25"
    })
    void daysAreTheSitesOwnAlsoWhenTheClockChanges(String zone, LocalDate day, int hours) throws SQLException {
        fixture.run("update site set time_zone = ? where id = ?", zone, site);
        ZoneId id = ZoneId.of(zone);
        List<Reading> readings = new ArrayList<>();
        Instant from = day.minusDays(1).atStartOfDay(id).toInstant();
        Instant to = day.plusDays(2).atStartOfDay(id).toInstant();
        for (Instant at = from; at.isBefore(to); at = at.plus(QUARTER)) {
            LocalDate local = LocalDate.ofInstant(at, id);
            readings.add(answered(device, at, local.equals(day) ? 7 : 90, 5));
        }
        store.store(readings);
        rollUp(to.plusSeconds(60));
        assertThat(fixture.rows(
                        "select clients_n, clients_min, clients_mean, clients_max from day_device where day = ?", day))
                .containsExactly(List.of(4 * hours, 7f, 7f, 7f));
        assertThat(fixture.rows("select clients_n from day_network where day = ?", day))
                .containsExactly(List.of(4 * hours));
    }

    /** Berlin is 1 h, Auckland 13 h ahead of UTC on these days (tz database): 23:30 in Berlin is the next day there. */
    @Test
    void aCorrectedTimeZoneMovesPastReadingsIntoTheirRightDays() throws SQLException {
        fixture.run("update site set created_at = '2026-11-20 09:00+00'");
        store.store(
                List.of(answered(device, TEN, 6, 40), answered(device, Instant.parse("2026-11-20T22:30:00Z"), 20, 40)));
        rollUp(NEXT_DAY);
        assertThat(fixture.rows("select day::text, clients_n, clients_mean from day_device order by day"))
                .containsExactly(List.of("2026-11-20", 2, 13f));
        fixture.run("update site set time_zone = 'Pacific/Auckland' where id = ?", site);
        rollUp(Instant.now().plus(Duration.ofDays(1)));
        assertThat(fixture.rows("select day::text, clients_n, clients_mean from day_device order by day"))
                .containsExactly(List.of("2026-11-20", 1, 6f), List.of("2026-11-21", 1, 20f));
        assertThat(fixture.rows("select day::text, clients_n from day_network order by day"))
                .containsExactly(List.of("2026-11-20", 1), List.of("2026-11-21", 1));
    }

    @Test
    void theCurrentDayIsBuiltNowAndThenAndOnceMoreWhenItIsOver() throws SQLException {
        store.store(List.of(answered(device, TEN, 6, 40)));
        rollUp(TEN.plusSeconds(30));
        assertThat(fixture.count("day_device")).isZero();
        rollUp(TEN.plusSeconds(931));
        assertThat(fixture.count("day_device")).isEqualTo(1);
        assertThat(fixture.count("day_mark")).isZero();
    }

    @Test
    void oneQuarterHourIsFoundWithoutReadingTheWholeDay() throws SQLException {
        List<Reading> readings = new ArrayList<>();
        for (int i = 0; i < 20_000; i++) {
            readings.add(silent(device, TEN.plusSeconds(2L * i)));
        }
        store.store(readings);
        new Partitions(source).summarise();
        fixture.run("analyze");
        String plan = fixture.rows(
                        "explain (analyze, costs off, timing off, summary off) select count(*) from reading_device"
                                + " where at >= '2026-11-20 11:00+00' and at < '2026-11-20 11:15+00'")
                .toString();
        assertThat(plan).contains("reading_device_20261120_at_idx").doesNotContain("Seq Scan");
    }

    @Test
    void lateReadingsOfATimeWithoutItsRawReadingsFillInButReplaceNothing() throws SQLException {
        store.store(List.of(answered(device, TEN, 6, 40)));
        rollUp(NEXT_DAY);
        fixture.run("delete from reading_device");
        fixture.run("update readings_state set raw_since = '2026-11-21 00:00+00'");
        store.store(List.of(answered(device, TEN.plusSeconds(60), 50, 40), answered(device, TEN.plus(QUARTER), 8, 40)));
        rollUp(NEXT_DAY);
        assertThat(clients(QUARTER))
                .containsExactly(new Series.Point(TEN, 1, 6, 6, 6), new Series.Point(TEN.plus(QUARTER), 1, 8, 8, 8));
    }

    @Test
    void partitionsPastTheirTimeAreDroppedOnceNothingInThemWaits() throws SQLException {
        store.store(List.of(
                answered(device, TEN, 6, 40),
                answered(device, TEN.plus(Duration.ofDays(9)), 6, 40),
                answered(device, TEN.plus(Duration.ofDays(17)), 6, 40)));
        Instant now = TEN.plus(Duration.ofDays(17));
        Retention retention = new Retention(source, Clock.fixed(now, ZoneOffset.UTC), 8, 1);
        assertThat(retention.run()).isEmpty();
        rollUp(now.plusSeconds(1));
        assertThat(retention.run())
                .containsExactly("reading_device_20261120", "reading_radio_20261120", "reading_network_20261120");
        assertThat(retention.run()).isEmpty();
        assertThat(fixture.count("reading_device")).isEqualTo(2);
        assertThat(clients(QUARTER)).hasSize(1);
        assertThat(fixture.rows("select raw_since = '2026-11-29 00:00+00' from readings_state"))
                .containsExactly(List.of(true));
        Instant later = now.plus(Duration.ofDays(60));
        assertThat(new Retention(source, Clock.fixed(later, ZoneOffset.UTC), 8, 1).run())
                .contains("quarter_device_202611", "quarter_site_202611");
        // a reading that comes later still finds its day again, once the writer knows that it is gone
        store.forget();
        store.store(List.of(answered(device, TEN.plusSeconds(60), 6, 40)));
        assertThat(fixture.count("reading_device")).isEqualTo(1);
    }
}
