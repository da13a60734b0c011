package org.roundsman.reports.figures;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import org.roundsman.readings.ReadingsFixture;
import org.roundsman.readings.store.Partitions;

/**
 * Measures what the clients and the channels of one large customer cost in a report: a month of 31 days with three radios and
 * three networks at each access point, and the months to compare with. Arguments: number of access points (200), of sites (10).
 */
public final class ReportUseBenchmark {

    private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");
    private static final LocalDate FROM = LocalDate.of(2026, 10, 1);
    private static final LocalDate TO = LocalDate.of(2026, 11, 1);

    private static final String TIMES =
            " from generate_series(?::timestamptz, ?::timestamptz - interval '15 minutes', interval '15 minutes') g (at)";

    private final DataSource source;
    private final ReadingsFixture fleet;
    private final List<SitePeriod> sites = new ArrayList<>();

    private ReportUseBenchmark(DataSource source) {
        this.source = source;
        this.fleet = new ReadingsFixture(source);
    }

    public static void main(String[] arguments) throws Exception {
        int accessPoints = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 200;
        int sites = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 10;
        try (EmbeddedPostgres postgres = EmbeddedPostgres.builder()
                .setServerConfig("shared_buffers", "512MB")
                .setServerConfig("max_wal_size", "4GB")
                .start()) {
            DataSource source = postgres.getPostgresDatabase();
            Flyway.configure()
                    .dataSource(source)
                    .locations("classpath:db/migration")
                    .load()
                    .migrate();
            ReportUseBenchmark benchmark = new ReportUseBenchmark(source);
            benchmark.makeFleet(accessPoints, sites);
            benchmark.makePast();
            for (int turn = 1; turn <= 5; turn++) {
                benchmark.measure(turn);
            }
        }
    }

    private void makeFleet(int accessPoints, int count) {
        long customer = fleet.customer("Pebblegate Dental");
        for (int n = 0; n < count; n++) {
            long site = fleet.site(customer, "Clinic " + n, BERLIN.getId());
            fleet.run(
                    "insert into network (site_id, ssid, purpose) select ?, p, p from unnest(array['staff', 'guest', 'other'])"
                            + " p",
                    site);
            List<SitePeriod.Point> points = new ArrayList<>();
            for (int at = n; at < accessPoints; at += count) {
                String name = "ap-" + at;
                points.add(new SitePeriod.Point(fleet.accessPoint(site, name), name, "", Instant.EPOCH));
            }
            sites.add(new SitePeriod(site, "Clinic " + n, "", BERLIN, 99.5, start(FROM), start(TO), points));
        }
    }

    private static Instant start(LocalDate day) {
        return day.atStartOfDay(BERLIN).toInstant();
    }

    /** In the order of time, as rounds bring it. */
    private void makePast() throws Exception {
        EarlierPeriods earlier = PastHouse.earlier(FROM, TO);
        new Partitions(source)
                .forQuarters(List.of(
                        start(FROM),
                        start(TO),
                        start(earlier.monthFrom()),
                        start(earlier.yearFrom()),
                        start(earlier.yearTo())));
        fill(
                "insert into quarter_device (device_id, at, clients_n, clients_min, clients_mean, clients_max) select d.id,"
                        + " g.at, 15, 0, random() * 20, 30" + TIMES + " cross join device d order by g.at, d.id",
                FROM,
                TO);
        fill(
                "insert into quarter_radio (device_id, number, at, clients_n, clients_mean, utilisation_n, utilisation_mean)"
                        + " select d.id, r, g.at, 15, random() * 9, 15, random() * 80" + TIMES
                        + " cross join device d cross join generate_series(1, 3) r order by g.at, d.id, r",
                FROM,
                TO);
        fill(
                "insert into quarter_network (device_id, network_id, at, clients_n, clients_mean) select d.id, n.id, g.at,"
                        + " 15, random() * 6" + TIMES
                        + " cross join device d join network n on n.site_id = d.site_id order by g.at, d.id, n.id",
                FROM,
                TO);
        String site =
                "insert into quarter_site (site_id, at, clients_mean, covered_s) select s.id, g.at, random() * 200, 900"
                        + TIMES + " cross join site s order by g.at, s.id";
        fill(site, earlier.monthFrom(), earlier.monthTo());
        fill(site, earlier.yearFrom(), earlier.yearTo());
        fleet.run("vacuum analyze");
    }

    private void fill(String sql, LocalDate from, LocalDate to) {
        fleet.run(sql, start(from).atOffset(ZoneOffset.UTC), start(to).atOffset(ZoneOffset.UTC));
    }

    private void measure(int turn) {
        long begin = System.nanoTime();
        EarlierPeriods earlier = PastHouse.earlier(FROM, TO);
        Crowds crowds = new Crowds(source);
        sites.forEach(site -> crowds.ofSite(site, earlier));
        crowds.of(sites, earlier);
        long middle = System.nanoTime();
        int radios = new Radios(source).of(sites).size();
        long end = System.nanoTime();
        System.out.printf(
                "turn %d: clients of %d sites %d ms, %d radios %d ms%n",
                turn, sites.size(), (middle - begin) / 1_000_000, radios, (end - middle) / 1_000_000);
    }
}
