package org.roundsman.reports.figures;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.YearMonth;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Random;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.roundsman.demo.SetClock;
import org.roundsman.planned.PlannedWork;
import org.roundsman.readings.PastSpans;
import org.roundsman.readings.ReadingsFixture;
import org.roundsman.reports.ReportSubject;
import org.roundsman.reports.SiteFigures.Day;
import org.roundsman.reports.Watch;
import org.roundsman.reports.figures.SitePeriod.Point;
import org.roundsman.testing.TestDatabase;

/** Times of sites from stored spans and windows, compared with what PostgreSQL works out of the same rows as multiranges. */
class WatchedSitesDbTest {

    private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");
    private static final YearMonth MARCH = YearMonth.of(2026, 3);
    private static final Instant APRIL = berlin("2026-04-03T09:00");

    /**
     * Milliseconds of one condition at a site between two days, in its service hours or around the clock. Code 0 is planned
     * work. Independent of the service: range arithmetic of PostgreSQL, and its own time zones.
     */
    private static final String BY_SQL = """
        with stretch as (
            select tstzrange(?::timestamp at time zone 'Europe/Berlin', ?::timestamp at time zone 'Europe/Berlin') as r),
        open as (
            select case when ? then range_agg(tstzrange((day + h.opens::interval) at time zone 'Europe/Berlin',
                                                        (day + h.closes::interval) at time zone 'Europe/Berlin'))
                        else '{(,)}'::tstzmultirange end as m
              from generate_series(timestamp '2026-02-27', timestamp '2026-04-03', interval '1 day') as day
              join site_hours h on h.site_id = ? and h.weekday = extract(isodow from day)),
        point as (
            select d.id, d.site_id,
                   tstzrange(least(d.created_at, (select min(from_at) from span where device_id = d.id)), null) as there
              from device d where d.site_id = ? and d.kind = 'ACCESS_POINT'),
        part as (
            select p.id, tstzmultirange(p.there * stretch.r) * open.m as whole,
                   coalesce((select range_agg(tstzrange(w.from_at, w.to_at)) from planned_work w
                     where (w.reach = 'SITE' and w.site_id = p.site_id) or w.device_id = p.id), '{}') as work,
                   coalesce((select range_agg(tstzrange(s.from_at, s.to_at)) from span s
                     where s.device_id = p.id and s.condition = ?), '{}') as so
              from point p, stretch, open)
        select coalesce(sum(extract(epoch from upper(u) - lower(u))), 0) * 1000
          from part, unnest(case when ? = 0 then whole * work else whole * so - work end) as u
        """;

    private static DataSource database;
    private static ReadingsFixture fleet;

    private long customer;
    private long site;

    @BeforeAll
    static void open() {
        database = TestDatabase.fresh("watched_sites");
        fleet = new ReadingsFixture(database);
    }

    @BeforeEach
    void aSite() {
        customer = fleet.customer("Saltmarsh Ferry Line " + fleet.count("customer"));
        site = fleet.site(customer, "North pier", "Europe/Berlin");
    }

    private static Instant berlin(String local) {
        return LocalDateTime.parse(local).atZone(BERLIN).toInstant();
    }

    private static List<SiteTimes> times(DataSource source, long customer, Instant asOf) {
        SetClock clock = new SetClock(asOf.toString());
        return new WatchedSites(source, new PastSpans(source), new PlannedWork(source, clock))
                .of(ReportSubject.of(customer, "Saltmarsh Ferry Line", MARCH), asOf);
    }

    private SiteTimes times() {
        return times(database, customer, APRIL).get(0);
    }

    private long point(String name, Instant created) {
        long id = fleet.accessPoint(site, name);
        fleet.run("update device set created_at = ? where id = ?", created.atOffset(ZoneOffset.UTC), id);
        return id;
    }

    private static void span(long device, Instant from, Instant to, int condition) {
        fleet.run(
                "insert into span (device_id, from_at, to_at, condition) values (?, ?, ?, ?)",
                device,
                from.atOffset(ZoneOffset.UTC),
                to == null ? null : to.atOffset(ZoneOffset.UTC),
                condition);
    }

    private void work(Long device, Instant from, Instant to) {
        fleet.run(
                "insert into planned_work (reach, customer_id, site_id, device_id, title, kind, from_at, to_at, made_by,"
                        + " made_at, over_at) values (?, ?, ?, ?, 'Firmware', 'ONCE', ?, ?, 'wren', now(), ?)",
                device == null ? "SITE" : "DEVICE",
                customer,
                site,
                device,
                from.atOffset(ZoneOffset.UTC),
                to.atOffset(ZoneOffset.UTC),
                to.atOffset(ZoneOffset.UTC));
    }

    private void hours() {
        for (int weekday = 1; weekday <= 7; weekday++) {
            fleet.run(
                    "insert into site_hours (site_id, weekday, opens, closes) values (?, ?, '08:00', '17:30')",
                    site,
                    weekday);
        }
    }

    private Duration bySql(LocalDate from, LocalDate to, boolean service, int condition) {
        Object sum = fleet.rows(BY_SQL, from.toString(), to.toString(), service, site, site, condition, condition)
                .get(0)
                .get(0);
        return Duration.ofMillis(((BigDecimal) sum).longValueExact());
    }

    private void agree(Watch watch, LocalDate from, LocalDate to, boolean service) {
        assertThat(watch.answering()).isEqualTo(bySql(from, to, service, 1));
        assertThat(watch.silent()).isEqualTo(bySql(from, to, service, 2));
        assertThat(watch.refusing()).isEqualTo(bySql(from, to, service, 3));
        assertThat(watch.planned()).isEqualTo(bySql(from, to, service, 0));
    }

    /** Made-up spans from February to April, with gaps, to the second. */
    private void madeUp(Random random, long device) {
        Instant at = berlin("2026-02-26T00:00").plusSeconds(random.nextInt(86_400));
        int last = 0;
        while (at.isBefore(APRIL)) {
            Instant end = at.plusSeconds(1 + random.nextInt(random.nextInt(4) == 0 ? 200_000 : 9_000));
            int condition = 1 + random.nextInt(5);
            if (condition <= 4 && condition != last) {
                span(device, at, end, condition);
                last = condition;
            }
            at = end;
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {3, 47, 2026})
    void theDatabaseWorksOutTheSameTimes(long seed) {
        Random random = new Random(seed);
        hours();
        for (int i = 0; i < 4; i++) {
            Instant created = berlin("2026-02-20T00:00").plusSeconds(random.nextInt(25 * 86_400));
            long device = point("ap-" + i, created);
            if (i > 0) {
                madeUp(random, device);
            }
            Instant work = berlin("2026-02-28T12:00").plusSeconds(random.nextInt(32 * 86_400));
            work(device, work, work.plusSeconds(1 + random.nextInt(90_000)));
            work(null, work.minusSeconds(20_000), work.plusSeconds(random.nextInt(40_000)));
        }
        SiteTimes times = times();
        LocalDate first = MARCH.atDay(1);
        agree(times.whole(), first, first.plusMonths(1), false);
        agree(times.service(), first, first.plusMonths(1), true);
        for (Day day : times.days()) {
            agree(day.watch(), day.date(), day.date().plusDays(1), false);
        }
        assertThat(Gone.of(times.silences(), silence -> java.util.Optional.empty()).stream()
                        .map(Gone::silence)
                        .reduce(Duration.ZERO, Duration::plus))
                .isEqualTo(bySql(first, first.plusMonths(1), false, 2));
    }

    @Test
    void anAccessPointIsThereSinceItsFirstSpanWhenThatCameFirst() {
        long old = point("ap-old", berlin("2026-03-20T00:00"));
        span(old, berlin("2026-03-05T00:00"), berlin("2026-03-06T00:00"), 1);
        point("ap-new", berlin("2026-03-30T12:00"));
        point("ap-later", berlin("2026-04-01T00:00"));
        SiteTimes times = times();
        assertThat(times.site().points()).extracting(Point::device).containsExactly("ap-new", "ap-old");
        assertThat(times.since()).hasValue(LocalDate.parse("2026-03-05"));
        assertThat(times.whole().length())
                .as("27 days less the hour that the clock skips, and a day and a half")
                .isEqualTo(Duration.ofHours(27 * 24 - 1 + 36));
    }

    @Test
    void switchesAndGatewaysDoNotCount() {
        fleet.device(site, "sw-1", "NETWORK_SWITCH");
        fleet.device(site, "gw-1", "GATEWAY");
        fleet.run("update site set created_at = timestamptz '2026-01-01' where id = ?", site);
        assertThat(times().site().points()).isEmpty();
        assertThat(times().whole()).isEqualTo(Watch.NONE);
    }

    @Test
    void aSiteThatCameLaterIsLeftOut() {
        fleet.run("update site set created_at = timestamptz '2026-04-02 00:00Z' where id = ?", site);
        assertThat(times(database, customer, APRIL)).isEmpty();
    }

    /** A span that goes on reaches to when the next round is due: the rest is unwatched. */
    @Test
    void whatGoesOnIsKnownUntilTheNextRoundIsDue() {
        long device = point("ap-1", berlin("2026-01-01T00:00"));
        span(device, berlin("2026-02-01T00:00"), null, 1);
        fleet.run(
                "insert into device_now (device_id, last_round_at, next_in_s, outcome, condition, since) values (?, ?, 60, 0,"
                        + " 1, ?)",
                device,
                berlin("2026-03-11T00:00").atOffset(ZoneOffset.UTC),
                berlin("2026-02-01T00:00").atOffset(ZoneOffset.UTC));
        Watch whole = times().whole();
        assertThat(whole.answering()).isEqualTo(Duration.ofDays(10).plusMinutes(1));
        assertThat(whole.unwatched()).isEqualTo(Duration.ofHours(743).minus(whole.answering()));
    }

    @Test
    void moreAccessPointsTakeNoMoreStatements() {
        point("ap-0", berlin("2026-01-01T00:00"));
        int one = statements();
        for (int i = 1; i < 30; i++) {
            span(
                    point("ap-" + i, berlin("2026-01-01T00:00")),
                    berlin("2026-03-05T00:00"),
                    berlin("2026-03-06T00:00"),
                    2);
        }
        assertThat(statements()).isEqualTo(one).isPositive();
    }

    /** How many statements are prepared for the times and the past of the customer. */
    private int statements() {
        CountedStatements counted = new CountedStatements(database);
        times(counted.source(), customer, APRIL);
        PastEvents.of(counted.source(), ReportSubject.of(customer, "Saltmarsh Ferry Line", MARCH), APRIL);
        return counted.count();
    }
}
