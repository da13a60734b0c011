package org.roundsman.reports;

import io.agroal.api.AgroalDataSource;
import io.agroal.api.configuration.supplier.AgroalDataSourceConfigurationSupplier;
import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import org.roundsman.paper.Paper;
import org.roundsman.planned.PlannedWork;
import org.roundsman.readings.PastClients;
import org.roundsman.readings.PastSpans;
import org.roundsman.readings.ReadingsFixture;
import org.roundsman.readings.store.Partitions;
import org.roundsman.reports.figures.Inventory;
import org.roundsman.reports.figures.WatchedSites;
import org.roundsman.triage.PastPeople;

/**
 * Measures whole reports, from stored readings to figures, JSON and PDF, on a PostgreSQL with fsync on: first one customer with
 * many access points, then many customers with a few. Arguments: access points of the large customer (200), other customers (500),
 * access points of each (4), and the JDBC address of a database that an earlier run filled and that runs still, where there is
 * one. Heap in use is told afterwards.
 */
public final class ReportBenchmark {

    private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");
    private static final YearMonth MONTH = YearMonth.of(2026, 10);
    private static final Instant AS_OF = Instant.parse("2026-11-02T06:00:00Z");
    private static final String TIMES =
            " from generate_series(?::timestamptz, ?::timestamptz - interval '15 minutes', interval '15 minutes') g (at)";

    private final DataSource source;
    private final ReadingsFixture fleet;
    private final ReportJson json = new ReportJson();
    private final ReportDocument document = new ReportDocument(new ReportWords(() -> Optional.empty()), new Paper());

    private ReportBenchmark(DataSource source) {
        this.source = source;
        this.fleet = new ReadingsFixture(source);
    }

    public static void main(String[] arguments) throws Exception {
        int large = number(arguments, 0, 200);
        int customers = number(arguments, 1, 500);
        int each = number(arguments, 2, 4);
        if (arguments.length > 3) {
            ReportBenchmark benchmark = new ReportBenchmark(pool(arguments[3]));
            List<Long> all = benchmark.fleet.ids("select id from customer order by id");
            benchmark.measure(all.get(0), large, all.subList(1, all.size()), each);
            return;
        }
        Path folder = Files.createTempDirectory("report-benchmark");
        try (EmbeddedPostgres postgres = EmbeddedPostgres.builder()
                .setDataDirectory(folder.resolve("data"))
                .setServerConfig("fsync", "on")
                .setServerConfig("synchronous_commit", "on")
                .setServerConfig("shared_buffers", "512MB")
                .setServerConfig("max_wal_size", "4GB")
                .start()) {
            String url = postgres.getJdbcUrl("postgres", "postgres");
            System.out.println(url);
            Flyway.configure()
                    .dataSource(postgres.getPostgresDatabase())
                    .locations("classpath:db/migration")
                    .load()
                    .migrate();
            ReportBenchmark benchmark = new ReportBenchmark(pool(url));
            long one = benchmark.customer("Large", large, 10);
            List<Long> others = new ArrayList<>();
            for (int i = 0; i < customers; i++) {
                others.add(benchmark.customer("Customer " + i, each, 2));
            }
            benchmark.makePast();
            benchmark.measure(one, large, others, each);
        }
    }

    /** The pool that the service uses. */
    private static DataSource pool(String url) throws SQLException {
        return AgroalDataSource.from(
                new AgroalDataSourceConfigurationSupplier().connectionPoolConfiguration(pool -> pool.maxSize(4)
                        .connectionFactoryConfiguration(factory -> factory.jdbcUrl(url))));
    }

    private void measure(long one, int large, List<Long> others, int each) {
        for (int turn = 1; turn <= 5; turn++) {
            measure("one customer with " + large + " access points, turn " + turn, List.of(one));
        }
        measure(others.size() + " customers with " + each + " access points each", others);
    }

    private static int number(String[] arguments, int at, int otherwise) {
        return arguments.length > at ? Integer.parseInt(arguments[at]) : otherwise;
    }

    private long customer(String name, int accessPoints, int sites) {
        long customer = fleet.customer(name);
        for (int n = 0; n < sites; n++) {
            long site = fleet.site(customer, name + " site " + n, BERLIN.getId());
            fleet.run(
                    "insert into network (site_id, ssid, purpose) select ?, p, p from unnest(array['staff', 'guest']) p",
                    site);
            for (int at = n; at < accessPoints; at += sites) {
                fleet.accessPoint(site, "ap-" + at);
            }
        }
        return customer;
    }

    /** In the order of time, as rounds bring it; each access point was silent for half an hour each week. */
    private void makePast() throws Exception {
        fleet.run("update device set created_at = timestamptz '2026-01-01'");
        new Partitions(source).forQuarters(List.of(start(MONTH.atDay(1)), start(MONTH.atEndOfMonth())));
        fill(
                "insert into quarter_device (device_id, at, clients_n, clients_min, clients_mean, clients_max) select d.id, g.at,"
                        + " 15, 0, random() * 20, 30" + TIMES + " cross join device d order by g.at, d.id");
        fill(
                "insert into quarter_radio (device_id, number, at, clients_n, clients_mean, utilisation_n, utilisation_mean)"
                        + " select d.id, r, g.at, 15, random() * 9, 15, random() * 80" + TIMES
                        + " cross join device d cross join generate_series(1, 2) r order by g.at, d.id, r");
        fill(
                "insert into quarter_network (device_id, network_id, at, clients_n, clients_mean) select d.id, n.id, g.at, 15,"
                        + " random() * 6" + TIMES
                        + " cross join device d join network n on n.site_id = d.site_id order by g.at, d.id, n.id");
        fleet.run(
                "insert into span (device_id, from_at, to_at, condition) select d.id, g.at, g.at + interval '30 minutes', 2"
                        + " from device d, generate_series(timestamptz '2026-09-28 10:00Z', timestamptz '2026-11-01', interval '7 days')"
                        + " g (at)");
        fleet.run(
                "insert into span (device_id, from_at, to_at, condition) select d.id, g.at + interval '30 minutes', g.at +"
                        + " interval '7 days', 1 from device d, generate_series(timestamptz '2026-09-28 10:00Z', timestamptz"
                        + " '2026-11-01', interval '7 days') g (at)");
        fleet.run("vacuum analyze");
        System.out.printf(
                "%d access points, database ready%n",
                fleet.ids("select id from device").size());
    }

    private void fill(String sql) {
        fleet.run(
                sql,
                start(MONTH.atDay(1)).atOffset(ZoneOffset.UTC),
                start(MONTH.plusMonths(1).atDay(1)).atOffset(ZoneOffset.UTC));
    }

    private static Instant start(LocalDate day) {
        return day.atStartOfDay(BERLIN).toInstant();
    }

    private void measure(String what, List<Long> customers) {
        ReportFigures figures = figures();
        long[] spent = new long[3];
        long octets = 0;
        long begin = System.nanoTime();
        for (long customer : customers) {
            long at = System.nanoTime();
            Report report = figures.of(ReportSubject.of(customer, "Customer " + customer, MONTH), AS_OF);
            spent[0] += -at + (at = System.nanoTime());
            octets += json.write(report).length;
            json.observed(report);
            spent[1] += -at + (at = System.nanoTime());
            octets += document.pdf(report, look()).length;
            spent[2] += System.nanoTime() - at;
        }
        System.gc();
        Runtime runtime = Runtime.getRuntime();
        System.out.printf(
                "%s: %d ms in all; figures, JSON, PDF %s ms; %d KB kept; heap in use after %d MB%n",
                what,
                (System.nanoTime() - begin) / 1_000_000,
                Arrays.toString(
                        Arrays.stream(spent).map(each -> each / 1_000_000).toArray()),
                octets / 1024,
                (runtime.totalMemory() - runtime.freeMemory()) / 1_048_576);
    }

    private ReportFigures figures() {
        PlannedWork planned = new PlannedWork(source, Clock.fixed(AS_OF, ZoneOffset.UTC));
        return new ReportFigures(
                source,
                new WatchedSites(source, new PastSpans(source), planned),
                new PastPeople(new PastClients(source), planned),
                new Inventory(source),
                true);
    }

    private static ReportLook look() {
        ReportLook.Brand brand = ReportLook.Brand.named("Fernhollow Networks");
        return new ReportLook(
                Locale.ENGLISH, ReportLook.PaperSize.A4, brand, ReportLook.Brand.named("Customer"), "", true, 1, AS_OF);
    }
}
