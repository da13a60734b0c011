package org.roundsman.reports.figures;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import javax.sql.DataSource;
import org.roundsman.measure.Metric;
import org.roundsman.measure.Subject;
import org.roundsman.measure.Values;
import org.roundsman.readings.HistoryLoad;
import org.roundsman.readings.HistoryLoad.DeviceQuarter;
import org.roundsman.readings.HistoryLoad.NetworkQuarter;
import org.roundsman.readings.HistoryLoad.RadioQuarter;
import org.roundsman.readings.ReadingsFixture;
import org.roundsman.reports.ReportSubject;
import org.roundsman.testing.TestDatabase;

/** An invented customer in a database, with quarter hours of the past. */
final class PastHouse {

    static final Duration QUARTER = Duration.ofMinutes(15);

    /** Long before everything that is measured. */
    static final Instant ALWAYS = Instant.parse("2024-01-01T00:00:00Z");

    final DataSource database;
    final ReadingsFixture fleet;
    final long customer;
    private final HistoryLoad history;
    private final List<DeviceQuarter> quarters = new ArrayList<>();

    PastHouse(String databaseName) {
        database = TestDatabase.fresh(databaseName);
        fleet = new ReadingsFixture(database);
        customer = fleet.customer("Pebblegate Dental");
        history = new HistoryLoad(database, Clock.fixed(Instant.parse("2027-06-01T00:00:00Z"), ZoneOffset.UTC));
    }

    /** A site with so many access points, {@code ap-1} and so on. */
    SitePeriod site(String name, ZoneId zone, LocalDate from, LocalDate to, int accessPoints) {
        long site = fleet.site(customer, name, zone.getId());
        List<SitePeriod.Point> points = new ArrayList<>();
        for (int n = 1; n <= accessPoints; n++) {
            long device = fleet.accessPoint(site, "ap-" + n);
            points.add(new SitePeriod.Point(device, "ap-" + n, "Room " + n, ALWAYS));
        }
        return new SitePeriod(
                site,
                name,
                "",
                zone,
                99.5,
                from.atStartOfDay(zone).toInstant(),
                to.atStartOfDay(zone).toInstant(),
                points);
    }

    /** The same access points on other days. */
    static SitePeriod on(SitePeriod site, LocalDate from, LocalDate to) {
        return new SitePeriod(
                site.siteId(),
                site.site(),
                site.town(),
                site.zone(),
                site.target(),
                from.atStartOfDay(site.zone()).toInstant(),
                to.atStartOfDay(site.zone()).toInstant(),
                site.points());
    }

    static EarlierPeriods earlier(LocalDate from, LocalDate to) {
        return EarlierPeriods.of(new ReportSubject(1, "Pebblegate Dental", from, to));
    }

    /** Clients of one access point in a quarter hour. @param networks clients by SSID */
    PastHouse clients(long device, Instant at, double all, Map<String, Double> networks) {
        quarters.add(new DeviceQuarter(
                device,
                at,
                15,
                Values.builder(Subject.DEVICE).set(Metric.CLIENTS, all).build(),
                List.of(),
                networks.entrySet().stream()
                        .map(network -> new NetworkQuarter(
                                network.getKey(),
                                Values.builder(Subject.NETWORK)
                                        .set(Metric.NETWORK_CLIENTS, network.getValue())
                                        .build()))
                        .toList()));
        return this;
    }

    /** The same all through an hour. */
    PastHouse hour(long device, Instant at, double all) {
        for (int i = 0; i < 4; i++) {
            clients(device, at.plus(QUARTER.multipliedBy(i)), all, Map.of());
        }
        return this;
    }

    /** Radios of one access point in a quarter hour, from number 1 on: utilisation and clients of each. */
    PastHouse radios(long device, Instant at, double[]... radios) {
        List<RadioQuarter> all = new ArrayList<>();
        for (int n = 0; n < radios.length; n++) {
            Values figures = Values.builder(Subject.RADIO)
                    .set(Metric.UTILISATION, radios[n][0])
                    .set(Metric.RADIO_CLIENTS, radios[n][1])
                    .build();
            all.add(new RadioQuarter(n + 1, figures, figures));
        }
        quarters.add(new DeviceQuarter(device, at, 15, Values.none(Subject.DEVICE), all, List.of()));
        return this;
    }

    /** Stores what was told so far. Networks are for what their SSID says. */
    void store() {
        history.load(quarters, List.of());
        quarters.clear();
        fleet.run("update network set purpose = ssid where ssid in ('staff', 'guest')");
    }

    List<Object> one(String sql, Object... parameters) {
        return fleet.rows(sql, parameters).get(0);
    }
}
