package org.roundsman.triage;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Set;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.alarms.Impact;
import org.roundsman.demo.SetClock;
import org.roundsman.planned.PlannedWork;
import org.roundsman.readings.PastClients;
import org.roundsman.readings.PastSpans;
import org.roundsman.readings.ReadingsFixture;
import org.roundsman.testing.TestDatabase;
import org.roundsman.triage.PastPeople.Absence;

/** Impacts against medians worked out by hand. Changes of the clock: Europe/Berlin, 2026-03-29 and 2026-10-25 (tz database). */
class ImpactsDbTest {

    private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");
    /** A Tuesday, 10:20 by the clock of the site. */
    private static final Instant TUESDAY = berlin("2026-06-30T10:20");

    private static DataSource database;
    private static ReadingsFixture fleet;

    private Impacts impacts;
    private long site;
    private long point;

    @BeforeAll
    static void open() {
        database = TestDatabase.fresh("impacts");
        fleet = new ReadingsFixture(database);
        for (String table : List.of("quarter_device", "quarter_network", "quarter_radio")) {
            fleet.run("create table " + table + "_all partition of " + table + " default");
        }
        fleet.customer("Quillfeather School");
    }

    @BeforeEach
    void site() {
        long number = fleet.count("site");
        site = fleet.site(1, "Building " + number, "Europe/Berlin");
        point = fleet.accessPoint(site, "ap-" + number);
        SetClock clock = new SetClock("2026-06-30T08:20:00Z");
        impacts = new Impacts(
                database, new PastClients(database), new PastSpans(database), new PlannedWork(database, clock));
    }

    private static Instant berlin(String local) {
        return LocalDateTime.parse(local).atZone(BERLIN).toInstant();
    }

    private static void quarter(long device, Instant at, double clients) {
        fleet.run(
                "insert into quarter_device (device_id, at, clients_n, clients_min, clients_mean, clients_max)"
                        + " values (?, ?, 15, 0, ?, 99)",
                device,
                at.atOffset(ZoneOffset.UTC),
                clients);
    }

    /** All four quarters of the hour that begins there. */
    private static void hour(long device, Instant from, double clients) {
        for (int i = 0; i < 4; i++) {
            quarter(device, from.plus(Duration.ofMinutes(15L * i)), clients);
        }
    }

    private void network(long device, Instant at, String ssid, String purpose, double clients) {
        fleet.run(
                "insert into network (site_id, ssid, purpose) values (?, ?, ?) on conflict do nothing",
                site,
                ssid,
                purpose);
        fleet.run(
                "insert into quarter_network (device_id, network_id, at, clients_n, clients_mean) select ?, id, ?, 15,"
                        + " ? from network where site_id = ? and ssid = ?",
                device,
                at.atOffset(ZoneOffset.UTC),
                clients,
                site,
                ssid);
    }

    private void span(long device, Instant from, Instant to, int condition) {
        fleet.run(
                "insert into span (device_id, from_at, to_at, condition) values (?, ?, ?, ?)",
                device,
                from.atOffset(ZoneOffset.UTC),
                to.atOffset(ZoneOffset.UTC),
                condition);
    }

    private int clients(Instant at) {
        return impacts.of(site, Set.of(point), at).clients().orElseThrow();
    }

    @Test
    void withoutAPastNothingIsKnown() {
        Impact impact = impacts.of(site, Set.of(point), TUESDAY);
        assertThat(impact.clients()).isEmpty();
        assertThat(impact.devices()).isEqualTo(1);
    }

    @Test
    void theMedianOfFourWeeksLiesBetweenTheMiddleTwo() {
        hour(point, berlin("2026-06-23T10:00"), 40);
        hour(point, berlin("2026-06-16T10:00"), 10);
        hour(point, berlin("2026-06-09T10:00"), 30);
        hour(point, berlin("2026-06-02T10:00"), 90);
        hour(point, berlin("2026-05-26T10:00"), 1_000); // the fifth week back does not count
        hour(point, berlin("2026-06-22T10:00"), 1_000); // nor does another day
        hour(point, berlin("2026-06-23T11:00"), 1_000); // nor another hour
        assertThat(clients(TUESDAY)).as("10 30 | 40 90").isEqualTo(35);
    }

    @Test
    void theMedianOfThreeWeeksIsTheMiddleOne() {
        hour(point, berlin("2026-06-23T10:00"), 40);
        hour(point, berlin("2026-06-16T10:00"), 10);
        hour(point, berlin("2026-06-02T10:00"), 90);
        assertThat(clients(TUESDAY)).isEqualTo(40);
    }

    @Test
    void anHourIsTheMeanOfItsQuarters() {
        Instant ten = berlin("2026-06-23T10:00");
        quarter(point, ten, 10);
        quarter(point, ten.plusSeconds(900), 20);
        quarter(point, ten.plusSeconds(1_800), 60);
        assertThat(clients(TUESDAY)).isEqualTo(30);
    }

    @Test
    void severalAccessPointsAddTheirMedians() {
        long other = fleet.accessPoint(site, "ap-other");
        hour(point, berlin("2026-06-23T10:00"), 4);
        hour(other, berlin("2026-06-23T10:00"), 7);
        hour(other, berlin("2026-06-16T10:00"), 9);
        Impact both = impacts.of(site, Set.of(point, other), TUESDAY);
        assertThat(both.clients()).hasValue(4 + 8);
        assertThat(both.devices()).isEqualTo(2);
        assertThat(impacts.of(site, Set.of(other), TUESDAY).clients()).hasValue(8);
    }

    /** All four quarters of the hour that begins there. */
    private static void radioHour(long device, int radio, Instant from, double clients) {
        for (int i = 0; i < 4; i++) {
            fleet.run(
                    "insert into quarter_radio (device_id, number, at, clients_n, clients_mean) values (?, ?, ?, 15, ?)",
                    device,
                    radio,
                    from.plus(Duration.ofMinutes(15L * i)).atOffset(ZoneOffset.UTC),
                    clients);
        }
    }

    private Impact radio(int number) {
        return impacts.ofRadio(site, point, number, TUESDAY);
    }

    @Test
    void oneRadioHasTheShareOfThePeopleThatItHadInTheSameHourOfEarlierWeeks() {
        hour(point, berlin("2026-06-23T10:00"), 107);
        radioHour(point, 1, berlin("2026-06-23T10:00"), 20);
        radioHour(point, 2, berlin("2026-06-23T10:00"), 60);
        radioHour(point, 1, berlin("2026-06-16T10:00"), 40);
        radioHour(point, 2, berlin("2026-06-16T10:00"), 80);
        radioHour(point, 1, berlin("2026-06-30T09:00"), 1_000); // the last hour does not count beside them
        assertThat(radio(1).clients()).as("30 and 70: 30 % of 107").hasValue(32);
        assertThat(radio(2).clients()).hasValue(75);
        assertThat(radio(1).devices()).isEqualTo(1);
        assertThat(clients(TUESDAY)).as("the access point").isEqualTo(107);
    }

    @Test
    void peopleOfOneRadioAreToldApartAsThoseOfItsAccessPointAre() {
        Instant ten = berlin("2026-06-23T10:00");
        hour(point, ten, 40);
        for (int i = 0; i < 4; i++) {
            network(point, ten.plusSeconds(900L * i), "Staff", "staff", 8);
        }
        radioHour(point, 1, ten, 5);
        radioHour(point, 2, ten, 15);
        assertThat(radio(1).staff()).hasValue(2);
        assertThat(radio(1).guest()).hasValue(0);
        assertThat(radio(1).other()).hasValue(8);
    }

    @Test
    void withoutAPastOfRadiosTheLastHourTellsTheShareAndNothingIsClaimedOfAnEmptyRadio() {
        hour(point, berlin("2026-06-23T10:00"), 100);
        assertThat(radio(1).clients()).as("nothing tells it").isEmpty();
        impacts.moved(null);
        radioHour(point, 1, berlin("2026-06-30T09:15"), 20);
        radioHour(point, 2, berlin("2026-06-30T09:15"), 60);
        radioHour(point, 3, berlin("2026-06-30T09:15"), 0);
        assertThat(radio(1).clients()).as("20 of 80").hasValue(25);
        assertThat(radio(3).clients()).isEmpty();
        assertThat(radio(4).clients()).isEmpty();
        assertThat(radio(4).devices()).isEqualTo(1);
    }

    @Test
    void ofARadioWhoseAccessPointHasNoPastNothingIsKnown() {
        radioHour(point, 1, berlin("2026-06-23T10:00"), 20);
        assertThat(radio(1).clients()).isEmpty();
        assertThat(radio(1).devices()).isEqualTo(1);
    }

    @Test
    void clientsAreToldApartByWhatNetworksAreFor() {
        for (int i = 0; i < 4; i++) {
            Instant at = berlin("2026-06-23T10:00").plusSeconds(900L * i);
            quarter(point, at, 30);
            network(point, at, "Staff", "staff", 5);
            network(point, at, "Guests", "guest", 12);
            network(point, at, "Guests upstairs", "guest", 3);
            network(point, at, "Printers", "other", 4);
        }
        Impact impact = impacts.of(site, Set.of(point), TUESDAY);
        assertThat(impact.staff()).hasValue(5);
        assertThat(impact.guest()).hasValue(15);
        assertThat(impact.other()).as("4, and 6 on a network that is not known").hasValue(10);
    }

    @Test
    void aQuarterInWhichItWasSilentForAPartDoesNotCount() {
        Instant ten = berlin("2026-06-23T10:00");
        hour(point, ten, 20);
        fleet.run(
                "update quarter_device set clients_mean = 2 where device_id = ? and at = ?",
                point,
                ten.plusSeconds(1_800).atOffset(ZoneOffset.UTC));
        assertThat(clients(TUESDAY)).as("(20 + 20 + 2 + 20) / 4 = 15.5").isEqualTo(16);
        span(point, ten.plusSeconds(2_000), ten.plusSeconds(2_600), 2);
        impacts.moved(null);
        assertThat(clients(TUESDAY)).isEqualTo(20);
    }

    @Test
    void plannedWorkDoesNotCount() {
        hour(point, berlin("2026-06-23T10:00"), 2);
        hour(point, berlin("2026-06-16T10:00"), 20);
        assertThat(clients(TUESDAY)).isEqualTo(11);
        fleet.run(
                "insert into planned_work (reach, customer_id, site_id, title, kind, from_at, to_at, made_by, made_at,"
                        + " over_at) values ('SITE', 1, ?, 'Firmware', 'ONCE', ?, ?, 'wren', now(), ?)",
                site,
                berlin("2026-06-23T09:30").atOffset(ZoneOffset.UTC),
                berlin("2026-06-23T11:00").atOffset(ZoneOffset.UTC),
                berlin("2026-06-23T11:00").atOffset(ZoneOffset.UTC));
        impacts.changed(null);
        assertThat(clients(TUESDAY)).isEqualTo(20);
    }

    @Test
    void afterTheClocksWentForwardTheHourIsThatOfTheClock() {
        for (String monday : List.of("2026-03-23", "2026-03-16", "2026-03-09", "2026-03-02")) {
            hour(point, Instant.parse(monday + "T09:00:00Z"), 25); // 10:00 in winter
            hour(point, Instant.parse(monday + "T08:00:00Z"), 3);
        }
        assertThat(clients(Instant.parse("2026-03-30T08:20:00Z")))
                .as("10:20 in summer")
                .isEqualTo(25);
    }

    @Test
    void afterTheClocksWentBackTheHourIsThatOfTheClock() {
        for (String monday : List.of("2026-10-19", "2026-10-12", "2026-10-05", "2026-09-28")) {
            hour(point, Instant.parse(monday + "T08:00:00Z"), 25); // 10:00 in summer
            hour(point, Instant.parse(monday + "T09:00:00Z"), 3);
        }
        assertThat(clients(Instant.parse("2026-10-26T09:20:00Z")))
                .as("10:20 in winter")
                .isEqualTo(25);
    }

    @Test
    void anHourThatDidNotExistIsLeftOut() {
        hour(point, Instant.parse("2026-03-29T01:00:00Z"), 99); // 03:00 in summer: there was no 02:00
        hour(point, Instant.parse("2026-03-22T01:00:00Z"), 4);
        hour(point, Instant.parse("2026-03-15T01:00:00Z"), 6);
        hour(point, Instant.parse("2026-03-08T01:00:00Z"), 8);
        assertThat(clients(Instant.parse("2026-04-05T00:20:00Z")))
                .as("02:20 on a Sunday")
                .isEqualTo(6);
    }

    @Test
    void anHourThatCameTwiceCountsWithBoth() {
        hour(point, Instant.parse("2026-10-25T00:00:00Z"), 10); // 02:00 in summer
        hour(point, Instant.parse("2026-10-25T01:00:00Z"), 20); // 02:00 in winter
        assertThat(clients(Instant.parse("2026-11-01T01:20:00Z"))).isEqualTo(15);
    }

    @Test
    void serviceHoursAreThoseOfTheSitesClock() {
        assertThat(impacts.of(site, Set.of(point), TUESDAY).serviceHours())
                .as("none: always")
                .isTrue();
        fleet.run("insert into site_hours (site_id, weekday, opens, closes) values (?, 2, '08:00', '18:00')", site);
        impacts.moved(null);
        assertThat(impacts.of(site, Set.of(point), TUESDAY).serviceHours()).isTrue();
        assertThat(impacts.of(site, Set.of(point), berlin("2026-06-30T18:00")).serviceHours())
                .isFalse();
        assertThat(impacts.of(site, Set.of(point), berlin("2026-06-29T10:00")).serviceHours())
                .isFalse();
    }

    @Test
    void personMinutesAddUpHourByHour() {
        hour(point, berlin("2026-06-23T10:00"), 40);
        hour(point, berlin("2026-06-23T11:00"), 10);
        assertThat(impacts.personMinutes(site, Set.of(point), berlin("2026-06-30T10:30"), berlin("2026-06-30T11:15")))
                .as("30 min of 40 and 15 min of 10")
                .hasValue(30 * 40 + 15 * 10);
        assertThat(impacts.personMinutes(site, Set.of(), berlin("2026-06-30T10:30"), berlin("2026-06-30T11:15")))
                .isEmpty();
    }

    @Test
    void askedForAtOncePeopleAreTheSame() {
        long other = fleet.accessPoint(site, "ap-beside");
        int clients = 0;
        for (String day : List.of("2026-06-23", "2026-06-16", "2026-06-09", "2026-06-02")) {
            clients += 7;
            hour(point, berlin(day + "T10:00"), clients);
            hour(point, berlin(day + "T11:00"), 50 - clients);
            hour(other, berlin(day + "T11:00"), clients * clients);
        }
        network(point, berlin("2026-06-23T10:00"), "Staff", "staff", 3);
        span(point, berlin("2026-06-16T10:10"), berlin("2026-06-16T10:40"), 2);
        List<Absence> absences = List.of(
                new Absence(point, TUESDAY, berlin("2026-06-30T12:10")),
                new Absence(other, berlin("2026-06-30T11:30"), berlin("2026-06-30T11:50")));
        PastPeople.Usually usually = new PastPeople(
                        new PastClients(database), new PlannedWork(database, new SetClock("2026-06-30T08:20:00Z")))
                .of(site, BERLIN, absences);
        for (Absence absence : absences) {
            Set<Long> device = Set.of(absence.deviceId());
            assertThat(usually.personMinutes(absence))
                    .isPresent()
                    .isEqualTo(impacts.personMinutes(site, device, absence.from(), absence.to()));
            assertThat(usually.clients(device, absence.from()))
                    .isPresent()
                    .isEqualTo(impacts.of(site, device, absence.from()).clients());
        }
    }

    @Test
    void theMonthSoFarIsCountedInServiceHoursWithoutPlannedWork() {
        // Tuesdays only, 08:00 to 18:00: 2, 9, 16, 23 and 30 June; asked at 10:20 on the 30th: 42 h 20 min so far.
        fleet.run("insert into site_hours (site_id, weekday, opens, closes) values (?, 2, '08:00', '18:00')", site);
        span(point, berlin("2026-05-01T00:00"), berlin("2026-06-09T12:00"), 1);
        span(point, berlin("2026-06-09T12:00"), berlin("2026-06-09T20:00"), 2); // 6 h in service hours
        span(point, berlin("2026-06-09T20:00"), berlin("2026-06-30T10:20"), 1);
        fleet.run(
                "insert into planned_work (reach, customer_id, site_id, title, kind, from_at, to_at, made_by, made_at,"
                        + " over_at) values ('SITE', 1, ?, 'Firmware', 'ONCE', ?, ?, 'wren', now(), ?)",
                site,
                berlin("2026-06-09T16:00").atOffset(ZoneOffset.UTC),
                berlin("2026-06-09T17:00").atOffset(ZoneOffset.UTC),
                berlin("2026-06-09T17:00").atOffset(ZoneOffset.UTC));
        MonthSoFar month = impacts.month(site, TUESDAY).orElseThrow();
        assertThat(month.target()).isEqualTo(99.5);
        assertThat(month.open()).isEqualTo(Duration.ofMinutes(41 * 60 + 20));
        assertThat(month.whole()).isEqualTo(Duration.ofHours(50));
        assertThat(month.silent()).isEqualTo(Duration.ofHours(5));
        assertThat(month.answering()).isEqualTo(Duration.ofMinutes(36 * 60 + 20));
        assertThat(month.used()).isEqualTo(Duration.ofHours(5));
        assertThat(month.allowed()).as("0.5 % of 50 h").isEqualTo(Duration.ofMinutes(15));
        assertThat(month.left()).isNegative();
    }
}
