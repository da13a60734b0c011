package org.roundsman.reports.figures;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.roundsman.readings.ReadingsFixture.answered;

import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.roundsman.readings.store.BatchStore;
import org.roundsman.reports.RadioFigures;

class RadiosDbTest {

    private static final LocalDate OCTOBER = LocalDate.of(2026, 10, 1);
    private static final LocalDate NOVEMBER = LocalDate.of(2026, 11, 1);
    private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");

    private static final double ROUNDED = 0.000051;

    /** Radios over days by the clock of a zone, by PostgreSQL: parameters are the device, first day, zone, day after, zone. */
    private static final String RADIOS = """
        select number, percentile_cont(0.95) within group (order by utilisation_mean) filter (where utilisation_n > 0),
               avg(utilisation_mean::float8) filter (where utilisation_n > 0),
               count(*) filter (where utilisation_n > 0 and utilisation_mean > 70),
               count(*) filter (where utilisation_n > 0),
               percentile_cont(0.95) within group (order by clients_mean) filter (where clients_n > 0)
          from quarter_radio
         where device_id = ? and at >= (?::date)::timestamp at time zone ? and at < (?::date)::timestamp at time zone ?
         group by number order by number
        """;

    private PastHouse house;

    @BeforeEach
    void aHouse() {
        house = new PastHouse("radios");
    }

    private List<RadioFigures> radios(SitePeriod... sites) {
        return new Radios(house.database).of(List.of(sites));
    }

    private void anyFigures(SitePeriod site, Instant from, Instant to) {
        Random random = new Random(42);
        for (SitePeriod.Point point : site.points()) {
            for (Instant at = from; at.isBefore(to); at = at.plus(PastHouse.QUARTER)) {
                if (random.nextInt(20) > 0) {
                    house.radios(point.deviceId(), at, any(random, 90), any(random, 60), any(random, 100));
                }
            }
        }
        house.store();
    }

    private static double[] any(Random random, int most) {
        return new double[] {random.nextDouble() * most, random.nextInt(450) / 15.0};
    }

    /** The days before and after must not count, so there are figures of them too. */
    @ParameterizedTest
    @CsvSource({"Europe/Berlin, 2026-10, 2980", "America/New_York, 2026-03, 2972"})
    void monthsInWhichClocksAreTurnedAgreeWithTheDatabase(String zone, String month, int quarters) {
        LocalDate from = YearMonth.parse(month).atDay(1);
        LocalDate to = from.plusMonths(1);
        SitePeriod site = house.site("Market Row", ZoneId.of(zone), from, to, 2);
        anyFigures(site, site.from().minus(Duration.ofDays(1)), site.to().plus(Duration.ofDays(1)));
        List<RadioFigures> radios = radios(site);
        assertThat(radios).hasSize(6);
        for (SitePeriod.Point point : site.points()) {
            for (List<Object> row : house.fleet.rows(RADIOS, point.deviceId(), from, zone, to, zone)) {
                RadioFigures radio = radios.stream()
                        .filter(one -> one.deviceId() == point.deviceId())
                        .filter(one -> one.number() == real(row.get(0)))
                        .findFirst()
                        .orElseThrow();
                assertThat(radio.utilisation().getAsDouble()).isCloseTo(real(row.get(1)), within(ROUNDED));
                assertThat(radio.mean().getAsDouble()).isCloseTo(real(row.get(2)), within(ROUNDED));
                assertThat(radio.busy()).isEqualTo(PastHouse.QUARTER.multipliedBy((long) real(row.get(3))));
                assertThat((double) radio.quarters()).isEqualTo(real(row.get(4)));
                assertThat(radio.quarters()).isLessThan(quarters);
                assertThat(radio.clients().getAsDouble()).isCloseTo(real(row.get(5)), within(ROUNDED));
                assertThat(radio.expected()).isEqualTo(quarters);
            }
        }
    }

    private static double real(Object figure) {
        return ((Number) figure).doubleValue();
    }

    @Test
    void radiosComeBySiteAccessPointAndNumber() {
        SitePeriod canal = house.site("Canal Bridge", BERLIN, OCTOBER, NOVEMBER, 2);
        SitePeriod market = house.site("Market Row", BERLIN, OCTOBER, NOVEMBER, 1);
        for (SitePeriod site : List.of(market, canal)) {
            for (SitePeriod.Point point : site.points()) {
                house.radios(point.deviceId(), site.from(), new double[] {20, 1}, new double[] {30, 2});
            }
        }
        house.store();
        assertThat(radios(canal, market))
                .extracting(radio -> radio.site() + " " + radio.device() + " " + radio.place() + " " + radio.number())
                .containsExactly(
                        "Canal Bridge ap-1 Room 1 1",
                        "Canal Bridge ap-1 Room 1 2",
                        "Canal Bridge ap-2 Room 2 1",
                        "Canal Bridge ap-2 Room 2 2",
                        "Market Row ap-1 Room 1 1",
                        "Market Row ap-1 Room 1 2");
    }

    @Test
    void aKnownRadioWithoutFiguresIsListedWithoutThem() {
        SitePeriod site = house.site("Market Row", BERLIN, OCTOBER, NOVEMBER, 1);
        long device = site.points().get(0).deviceId();
        house.fleet.run("insert into radio (device_id, number) values (?, 3)", device);
        assertThat(radios(site))
                .containsExactly(new RadioFigures(
                        site.siteId(),
                        "Market Row",
                        device,
                        "ap-1",
                        "Room 1",
                        3,
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        Duration.ZERO,
                        0,
                        2980,
                        OptionalDouble.empty()));
        assertThat(radios()).isEmpty();
    }

    @Test
    void theBandIsThatOfTheLastAnswer() throws SQLException {
        SitePeriod site = house.site("Market Row", BERLIN, OCTOBER, NOVEMBER, 1);
        long device = site.points().get(0).deviceId();
        Instant now = Instant.parse("2026-11-01T03:00:00Z");
        new BatchStore(house.database, Clock.fixed(now, ZoneOffset.UTC)).store(List.of(answered(device, now, 4, 20)));
        assertThat(radios(site)).extracting(radio -> radio.band().getAsDouble()).containsExactly(2.4, 5.0);
    }

    @Test
    void quarterHoursAreExpectedFromWhenTheAccessPointCame() {
        SitePeriod site = house.site("Market Row", BERLIN, OCTOBER, NOVEMBER, 1);
        long device = site.points().get(0).deviceId();
        Instant since = site.to().minus(Duration.ofMinutes(50));
        house.fleet.run("insert into radio (device_id, number) values (?, 1)", device);
        SitePeriod fresh = new SitePeriod(
                site.siteId(),
                site.site(),
                "",
                BERLIN,
                99.5,
                site.from(),
                site.to(),
                List.of(new SitePeriod.Point(device, "ap-1", "", since)));
        assertThat(radios(fresh)).singleElement().satisfies(radio -> assertThat(radio.expected())
                .isEqualTo(4));
    }
}
