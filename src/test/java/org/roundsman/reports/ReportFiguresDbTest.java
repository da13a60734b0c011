package org.roundsman.reports;

import static org.assertj.core.api.Assertions.assertThat;
import static org.roundsman.reports.figures.PastOfSite.at;

import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.ZoneOffset;
import java.util.List;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.planned.PlannedWork;
import org.roundsman.readings.PastClients;
import org.roundsman.readings.PastSpans;
import org.roundsman.readings.ReadingsFixture;
import org.roundsman.reports.figures.CountedStatements;
import org.roundsman.reports.figures.Inventory;
import org.roundsman.reports.figures.PastOfSite;
import org.roundsman.reports.figures.WatchedSites;
import org.roundsman.testing.TestDatabase;
import org.roundsman.triage.PastPeople;

/** Whole reports of an invented customer with sites in Berlin and New York; lengths of months by java.time. */
class ReportFiguresDbTest {

    private static final Instant LATER = at("2026-11-05T06:00");

    private static DataSource database;

    private PastOfSite past;

    @BeforeAll
    static void open() {
        database = TestDatabase.fresh("report_figures");
        ReadingsFixture fleet = new ReadingsFixture(database);
        for (String table : List.of("quarter_device", "quarter_network", "quarter_radio", "quarter_site")) {
            fleet.run("create table if not exists " + table + "_all partition of " + table + " default");
        }
    }

    @BeforeEach
    void aCustomer() {
        past = new PastOfSite(database);
    }

    private static ReportFigures figures(DataSource source, Instant asOf) {
        PlannedWork planned = new PlannedWork(source, Clock.fixed(asOf, ZoneOffset.UTC));
        return new ReportFigures(
                source,
                new WatchedSites(source, new PastSpans(source), planned),
                new PastPeople(new PastClients(source), planned),
                new Inventory(source),
                true);
    }

    private Report october(Instant asOf) {
        return figures(database, asOf).of(subject(), asOf);
    }

    private ReportSubject subject() {
        return ReportSubject.of(past.customer, past.name, YearMonth.of(2026, 10));
    }

    /** Two sites, one of them silent over the end of the month by its clock, and a past to tell people from. */
    private void aMonth() {
        long desk = past.device("ap-desk", "ACCESS_POINT");
        long hall = past.device("ap-hall", "ACCESS_POINT");
        long sw = past.device("sw-1", "NETWORK_SWITCH");
        long pier = past.fleet.site(past.customer, "Atlantic pier", "America/New_York");
        long mast = past.fleet.accessPoint(pier, "ap-mast");
        past.fleet.run("update device set created_at = timestamptz '2025-01-01' where id = ?", mast);
        past.usually(desk, "2026-10-14T10:00", 4, 12.3456789);
        past.usually(hall, "2026-10-14T10:00", 4, 7);
        past.silent(desk, "2026-10-14T10:00", "2026-10-14T12:00");
        past.silent(hall, "2026-10-14T10:00", "2026-10-14T12:30");
        past.silent(mast, "2026-11-01T04:00", "2026-11-01T06:00");
        long lost = past.episode("device-silent", sw, "2026-10-14T10:00", "2026-10-14T12:30", "SWITCH_LOST", null);
        past.affects(lost, desk);
        past.affects(lost, hall);
        past.act(lost, "2026-10-14T10:20", "ACK");
        past.work("SITE", null, "Cabling", "2026-10-20T18:00", "2026-10-20T20:00");
        past.runs(desk, "2026-10-20T19:00", "6.4.1", "6.4.2");
    }

    private static String json(Report report) {
        return new String(new ReportJson().write(report), StandardCharsets.UTF_8);
    }

    @Test
    void sitesCountTheirOwnMonthAndMakeTheWholeTogether() {
        aMonth();
        Report report = october(LATER);
        assertThat(report.invented()).isTrue();
        assertThat(report.sites()).extracting(SiteFigures::site).containsExactly("Atlantic pier", "Mill Lane");
        SiteFigures pier = report.sites().get(0);
        SiteFigures lane = report.sites().get(1);
        assertThat(pier.length()).isEqualTo(Duration.ofHours(744));
        assertThat(lane.length()).isEqualTo(Duration.ofHours(745));
        assertThat(pier.whole().silent())
                .as("05:00 in Berlin is midnight in New York")
                .isEqualTo(Duration.ofHours(1));
        assertThat(lane.whole().silent()).isEqualTo(Duration.ofMinutes(270));
        assertThat(lane.whole().planned()).as("two hours of both").isEqualTo(Duration.ofHours(4));
        assertThat(report.whole()).isEqualTo(pier.whole().plus(lane.whole()));
        assertThat(report.service()).isEqualTo(pier.service().plus(lane.service()));
        assertThat(pier.days()).hasSize(31);
    }

    @Test
    void outagesAreToldByTheirBegin() {
        aMonth();
        List<Outage> outages = october(LATER).outages();
        assertThat(outages).extracting(Outage::cause).containsExactly(Outage.Cause.SWITCH, Outage.Cause.NOT_WORKED_OUT);
        assertThat(outages.get(0).what()).isEqualTo("sw-1");
        assertThat(outages.get(0).personMinutes())
                .as("120 min of 12.3456789 and 150 min of 7, to four decimals")
                .hasValue(2_531.4815);
        assertThat(outages.get(1).zone().getId()).isEqualTo("America/New_York");
        assertThat(outages.get(1).ongoing()).isTrue();
    }

    @Test
    void theRestOfTheReportIsThere() {
        aMonth();
        Report report = october(LATER);
        assertThat(report.handling().alarms()).isEqualTo(1);
        assertThat(report.work().planned()).hasSize(1);
        assertThat(report.work().upgraded()).hasSize(1);
        assertThat(report.crowd().clients()).isPresent();
    }

    /** Each time with nothing kept from before, and in another order. */
    @Test
    void theSameDataGivesTheSameReportToTheLastOctet() {
        aMonth();
        String first = json(october(LATER));
        assertThat(json(october(LATER))).isEqualTo(first);
        ReportFigures used = figures(database, LATER);
        used.of(ReportSubject.of(past.customer, past.name, YearMonth.of(2026, 9)), LATER);
        assertThat(json(used.of(subject(), LATER))).isEqualTo(first);
    }

    @Test
    void whereNothingWasObservedNothingIsToldAsZero() {
        past.device("ap-desk", "ACCESS_POINT");
        Report report = october(LATER);
        assertThat(report.whole().share()).isEmpty();
        assertThat(report.whole().coverage()).hasValue(0);
        assertThat(report.sites().get(0).met()).isEmpty();
        assertThat(report.outages()).isEmpty();
        assertThat(report.crowd().clients()).isEmpty();
        assertThat(report.handling().toClear()).isEmpty();
    }

    @Test
    void aCustomerWithoutDevicesHasAReport() {
        past.fleet.run("update site set created_at = timestamptz '2025-01-01' where id = ?", past.site);
        Report report = october(LATER);
        assertThat(report.whole()).isEqualTo(Watch.NONE);
        assertThat(report.sites()).hasSize(1);
        assertThat(report.sites().get(0).serviceHours()).isEqualTo(Duration.ofHours(745));
    }

    @Test
    void anyDaysMakeAReport() {
        aMonth();
        ReportSubject week = new ReportSubject(
                past.customer, past.name, LocalDate.parse("2026-10-12"), LocalDate.parse("2026-10-19"));
        Report report = figures(database, LATER).of(week, LATER);
        assertThat(report.sites().get(1).length()).isEqualTo(Duration.ofDays(7));
        assertThat(report.outages()).hasSize(1);
        assertThat(report.work().planned()).isEmpty();
    }

    @Test
    void moreAccessPointsAndOutagesTakeNoMoreStatements() {
        past.device("ap-0", "ACCESS_POINT");
        past.silent(past.device("ap-1", "ACCESS_POINT"), "2026-10-14T10:00", "2026-10-14T12:00");
        int one = statements();
        for (int i = 2; i < 25; i++) {
            long point = past.device("ap-" + i, "ACCESS_POINT");
            past.usually(point, "2026-10-14T10:00", 2, 10);
            past.silent(point, "2026-10-14T10:00", "2026-10-14T12:00");
            past.silent(point, "2026-10-15T10:00", "2026-10-15T12:00");
        }
        assertThat(statements()).isEqualTo(one).isPositive();
    }

    private int statements() {
        CountedStatements counted = new CountedStatements(database);
        figures(counted.source(), LATER).of(subject(), LATER);
        return counted.count();
    }
}
