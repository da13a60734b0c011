package org.roundsman.reports.figures;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.YearMonth;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.roundsman.reports.Crowd;
import org.roundsman.reports.Crowd.Split;

class CrowdsDbTest {

    private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");
    private static final LocalDate OCTOBER = LocalDate.of(2026, 10, 1);
    private static final LocalDate NOVEMBER = LocalDate.of(2026, 11, 1);

    /** Half of the fourth decimal, to which reports are rounded. */
    private static final double ROUNDED = 0.000051;

    /**
     * Hours of a month by the clock of a zone, worked out by PostgreSQL from the quarter hours alone: parameters are the zone
     * twice, the first day, and the first day after.
     */
    private static final String HOURS = """
        with stretch as (select ?::text as zone, ?::date as first, ?::date as after),
        hour as (
            select g.at, s.zone from stretch s cross join lateral generate_series(
                   s.first::timestamp at time zone s.zone,
                   (s.after::timestamp at time zone s.zone) - interval '1 hour', interval '1 hour') g (at)),
        total as (select at, sum(clients_mean::float8) as clients from quarter_device where clients_n > 0 group by at),
        staff as (
            select q.at, sum(q.clients_mean::float8) as clients from quarter_network q
              join network n on n.id = q.network_id where n.purpose = 'staff' group by q.at),
        held as (
            select h.at at time zone h.zone as wall, h.at, avg(t.clients) as clients,
                   case when count(t.at) > 0 then avg(coalesce(s.clients, 0)) filter (where t.at is not null) end as staff
              from hour h
              left join total t on t.at >= h.at and t.at < h.at + interval '1 hour'
              left join staff s on s.at = t.at
             group by h.at, h.zone)
        """;

    private PastHouse house;

    @BeforeEach
    void aHouse() {
        house = new PastHouse("crowds");
    }

    private Crowd crowd(SitePeriod site, LocalDate from, LocalDate to) {
        return new Crowds(house.database).ofSite(site, PastHouse.earlier(from, to));
    }

    private Crowd october(SitePeriod site) {
        return crowd(site, OCTOBER, NOVEMBER);
    }

    private SitePeriod clinic(int accessPoints) {
        return house.site("Market Row", BERLIN, OCTOBER, NOVEMBER, accessPoints);
    }

    private static Instant at(String wall) {
        return LocalDateTime.parse(wall).atZone(BERLIN).toInstant();
    }

    /** Any figures, with holes: one quarter hour in ten is missing, and so are five hours of every fifth day. */
    private void anyFigures(SitePeriod site) {
        Random random = new Random(20261025);
        for (SitePeriod.Point point : site.points()) {
            int number = 0;
            for (Instant at = site.from(); at.isBefore(site.to()); at = at.plus(PastHouse.QUARTER)) {
                boolean hole = random.nextInt(10) == 0 || number / 96 % 5 == 3 && number % 96 < 20;
                number++;
                if (!hole) {
                    double all = random.nextInt(300) / 15.0;
                    house.clients(
                            point.deviceId(),
                            at,
                            all,
                            random.nextInt(4) == 0
                                    ? Map.of("staff", all / 3)
                                    : Map.of("staff", all / 3, "guest", all / 2));
                }
            }
        }
        house.store();
    }

    /** How long the months are: the IANA time zone database, by java.time. */
    @ParameterizedTest
    @CsvSource({"Europe/Berlin, 2026-10, 745", "America/New_York, 2026-03, 743"})
    void monthsInWhichClocksAreTurnedAgreeWithTheDatabase(String zone, String month, long length) {
        LocalDate from = YearMonth.parse(month).atDay(1);
        LocalDate to = from.plusMonths(1);
        SitePeriod site = house.site("Market Row", ZoneId.of(zone), from, to, 3);
        anyFigures(site);
        Crowd crowd = crowd(site, from, to);
        List<Object> sums = house.one(
                HOURS + "select avg(clients), avg(staff), count(clients), count(*), max(clients),"
                        + " (select extract(epoch from m.at) from held m order by round(m.clients::numeric, 4) desc"
                        + " nulls last, m.at limit 1)"
                        + " from held",
                zone,
                from,
                to);
        Split mean = crowd.clients().orElseThrow();
        assertThat(mean.all()).isCloseTo(real(sums.get(0)), within(ROUNDED));
        assertThat(mean.staff()).isCloseTo(real(sums.get(1)), within(ROUNDED));
        assertThat(mean.other()).isCloseTo(mean.all() - mean.staff() - mean.guest(), within(3 * ROUNDED));
        assertThat(sums.get(3)).isEqualTo(length);
        assertThat(crowd.observed()).isCloseTo(real(sums.get(2)) / length, within(ROUNDED));
        assertThat(crowd.observed()).isLessThan(1);
        Crowd.Busiest busiest = crowd.busiest().orElseThrow();
        assertThat(busiest.clients().all()).isCloseTo(real(sums.get(4)), within(ROUNDED));
        assertThat((double) busiest.at().getEpochSecond()).isEqualTo(real(sums.get(5)));
        agreesByTheClock(crowd, zone, from, to);
    }

    private void agreesByTheClock(Crowd crowd, String zone, LocalDate from, LocalDate to) {
        List<List<Object>> day = house.fleet.rows(
                HOURS
                        + "select hour, percentile_cont(0.5) within group (order by clients) from (select extract(hour from"
                        + " wall)::integer as hour, wall::date as day, avg(clients) as clients from held where clients is"
                        + " not null group by 1, 2) d group by hour order by hour",
                zone,
                from,
                to);
        assertThat(day).hasSize(24);
        for (int hour = 0; hour < 24; hour++) {
            assertThat(crowd.typicalDay().get(hour).getAsDouble())
                    .isCloseTo(real(day.get(hour).get(1)), within(ROUNDED));
        }
        List<List<Object>> week = house.fleet.rows(
                HOURS
                        + "select (extract(isodow from wall)::integer - 1) * 24 + extract(hour from wall)::integer as cell,"
                        + " avg(clients), avg(staff) from held where clients is not null group by cell order by cell",
                zone,
                from,
                to);
        assertThat(week).hasSize(168);
        for (int cell = 0; cell < 168; cell++) {
            Split split = crowd.week().get(cell).orElseThrow();
            assertThat(split.all()).isCloseTo(real(week.get(cell).get(1)), within(ROUNDED));
            assertThat(split.staff()).isCloseTo(real(week.get(cell).get(2)), within(ROUNDED));
        }
    }

    private static double real(Object figure) {
        return ((Number) figure).doubleValue();
    }

    @Test
    void theBusiestHourIsTheFirstOfThoseWithTheMost() {
        SitePeriod site = clinic(2);
        long first = site.points().get(0).deviceId();
        long second = site.points().get(1).deviceId();
        // (4 + 6 + 8 + 10) / 4 = 7 at one access point and 3 at the other: 10 together, as there are again an hour
        // later
        for (int i = 0; i < 4; i++) {
            Instant quarter = at("2026-10-12T09:00").plus(PastHouse.QUARTER.multipliedBy(i));
            house.clients(first, quarter, 4 + 2 * i, Map.of()).clients(second, quarter, 3, Map.of());
        }
        house.hour(first, at("2026-10-12T10:00"), 9).hour(second, at("2026-10-12T10:00"), 1);
        house.hour(first, at("2026-10-13T09:00"), 5);
        house.store();
        Crowd.Busiest busiest = october(site).busiest().orElseThrow();
        assertThat(busiest.at()).isEqualTo(at("2026-10-12T09:00"));
        assertThat(busiest.zone()).isEqualTo(BERLIN);
        assertThat(busiest.clients()).isEqualTo(new Split(10, 0, 0, 10));
    }

    @Test
    void hoursWithoutFiguresStayEmpty() {
        SitePeriod site = clinic(1);
        long device = site.points().get(0).deviceId();
        house.hour(device, at("2026-10-05T08:00"), 0);
        house.clients(device, at("2026-10-05T09:45"), 6, Map.of());
        house.store();
        Crowd crowd = october(site);
        assertThat(crowd.clients()).contains(new Split(3, 0, 0, 3));
        assertThat(crowd.observed()).isEqualTo(0.0027);
        assertThat(crowd.typicalDay()).containsOnlyOnce(OptionalDouble.of(0), OptionalDouble.of(6));
        assertThat(crowd.typicalDay()).filteredOn(OptionalDouble::isEmpty).hasSize(22);
        // the fifth was a Monday
        assertThat(crowd.week().get(8)).contains(new Split(0, 0, 0, 0));
        assertThat(crowd.week().get(9)).contains(new Split(6, 0, 0, 6));
        assertThat(crowd.week()).filteredOn(Optional::isEmpty).hasSize(166);
    }

    @Test
    void nothingAtAllGivesNoFigure() {
        Crowd crowd = october(clinic(1));
        assertThat(crowd.clients()).isEmpty();
        assertThat(crowd.busiest()).isEmpty();
        assertThat(crowd.observed()).isZero();
        assertThat(crowd.typicalDay()).containsOnly(OptionalDouble.empty());
        assertThat(crowd.week()).containsOnly(Optional.empty());
        assertThat(crowd.monthBefore()).isEqualTo(Crowd.Earlier.NOTHING);
        assertThat(new Crowds(house.database).of(List.of(), PastHouse.earlier(OCTOBER, NOVEMBER)))
                .isEqualTo(crowd);
    }

    @Test
    void theTypicalDayIsTheMedianOverTheDays() {
        SitePeriod site = clinic(1);
        long device = site.points().get(0).deviceId();
        // 2, 4, 7 and 30: the median of four is (4 + 7) / 2
        house.hour(device, at("2026-10-05T08:00"), 4)
                .hour(device, at("2026-10-06T08:00"), 30)
                .hour(device, at("2026-10-07T08:00"), 2)
                .hour(device, at("2026-10-08T08:00"), 7);
        house.store();
        assertThat(october(site).typicalDay().get(8)).hasValue(5.5);
    }

    @Test
    void theHourThatComesTwiceIsOneCell() {
        SitePeriod site = clinic(1);
        long device = site.points().get(0).deviceId();
        // 2026-10-25T01:00Z, when 3:00 becomes 2:00 again; the Sunday before has one hour of that name
        house.hour(device, Instant.parse("2026-10-25T00:00:00Z"), 3)
                .hour(device, Instant.parse("2026-10-25T01:00:00Z"), 9)
                .hour(device, at("2026-10-18T02:00"), 1);
        house.store();
        Crowd crowd = october(site);
        assertThat(crowd.week().get(6 * 24 + 2).orElseThrow().all()).isEqualTo(4.3333);
        // the days: (3 + 9) / 2 and 1
        assertThat(crowd.typicalDay().get(2)).hasValue(3.5);
        assertThat(crowd.busiest().orElseThrow().at()).isEqualTo(Instant.parse("2026-10-25T01:00:00Z"));
    }

    @Test
    void networksTellStaffFromGuests() {
        SitePeriod site = clinic(2);
        long first = site.points().get(0).deviceId();
        long second = site.points().get(1).deviceId();
        for (int i = 0; i < 4; i++) {
            Instant quarter = at("2026-10-12T09:00").plus(PastHouse.QUARTER.multipliedBy(i));
            house.clients(first, quarter, 10, Map.of("staff", 3.0, "guest", 4.0, "till", 2.0));
            house.clients(second, quarter, 5, Map.of("guest", 5.0));
        }
        // counted at another moment than the device itself: more on the networks than on it
        house.clients(first, at("2026-10-12T10:00"), 4, Map.of("staff", 5.0));
        house.store();
        Crowd crowd = october(site);
        assertThat(crowd.week().get(9)).contains(new Split(15, 3, 9, 3));
        assertThat(crowd.week().get(10)).contains(new Split(4, 5, 0, 0));
    }

    @Test
    void theMonthAndTheYearBeforeSayWhatTheirOwnReportsSaid() {
        LocalDate september = OCTOBER.minusMonths(1);
        LocalDate yearBefore = OCTOBER.minusYears(1);
        SitePeriod site = clinic(2);
        SitePeriod then = PastHouse.on(site, september, OCTOBER);
        SitePeriod longAgo = PastHouse.on(site, yearBefore, yearBefore.plusMonths(1));
        anyFigures(then);
        house.hour(site.points().get(0).deviceId(), at("2025-10-10T12:00"), 8);
        house.store();
        Crowd crowd = october(site);
        same(crowd.monthBefore(), crowd(then, september, OCTOBER));
        same(crowd.yearBefore(), crowd(longAgo, yearBefore, yearBefore.plusMonths(1)));
        assertThat(crowd.yearBefore().busiest()).hasValue(8);
        assertThat(crowd.yearBefore().observed()).isEqualTo(0.0013);
        assertThat(crowd.clients()).isEmpty();
        Crowd together = new Crowds(house.database).of(List.of(site), PastHouse.earlier(OCTOBER, NOVEMBER));
        assertThat(together).isEqualTo(crowd);
    }

    private static void same(Crowd.Earlier earlier, Crowd own) {
        assertThat(earlier.clients().getAsDouble())
                .isCloseTo(own.clients().orElseThrow().all(), within(2 * ROUNDED));
        assertThat(earlier.busiest().getAsDouble())
                .isCloseTo(own.busiest().orElseThrow().clients().all(), within(2 * ROUNDED));
        assertThat(earlier.observed()).isEqualTo(own.observed());
    }

    @Test
    void sitesAreAddedUpByTheMoment() {
        SitePeriod berlin = clinic(1);
        ZoneId kolkata = ZoneId.of("Asia/Kolkata");
        SitePeriod other = house.site("Canal Bridge", kolkata, OCTOBER, NOVEMBER, 1);
        SitePeriod third = house.site("Hill Top", BERLIN, OCTOBER, NOVEMBER, 1);
        // 10:00 in Berlin is 13:30 in Kolkata
        house.hour(berlin.points().get(0).deviceId(), at("2026-10-12T10:00"), 4);
        house.hour(other.points().get(0).deviceId(), at("2026-10-12T10:00"), 6);
        house.hour(other.points().get(0).deviceId(), at("2026-10-12T11:00"), 2);
        house.store();
        Crowds crowds = new Crowds(house.database);
        EarlierPeriods earlier = PastHouse.earlier(OCTOBER, NOVEMBER);
        Crowd together = crowds.of(List.of(other, third, berlin), earlier);
        assertThat(together.busiest().orElseThrow())
                .isEqualTo(new Crowd.Busiest(at("2026-10-12T10:00"), BERLIN, new Split(10, 0, 0, 10)));
        assertThat(together.week().get(11).orElseThrow().all()).isEqualTo(2);
        assertThat(crowds.ofSite(other, earlier).week().get(13)).contains(new Split(6, 0, 0, 6));
        assertThat(crowds.ofSite(third, earlier).clients()).isEmpty();
    }

    @Test
    void aSiteThatCameDuringTheMonthCountsFromThen() {
        SitePeriod site = clinic(1);
        long device = site.points().get(0).deviceId();
        SitePeriod fresh = new SitePeriod(
                site.siteId(),
                site.site(),
                "",
                BERLIN,
                99.5,
                site.from(),
                site.to(),
                List.of(new SitePeriod.Point(device, "ap-1", "", at("2026-10-31T12:30"))));
        house.hour(device, at("2026-10-31T13:00"), 2);
        house.store();
        Crowd crowd = october(fresh);
        // 12:30 to midnight are twelve begun hours
        assertThat(crowd.observed()).isEqualTo(0.0833);
        assertThat(crowd.monthBefore()).isEqualTo(Crowd.Earlier.NOTHING);
    }
}
