package org.roundsman.readings;

import static org.roundsman.readings.ReadingsFixture.answered;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.measure.Condition;
import org.roundsman.measure.Metric;
import org.roundsman.measure.Subject;
import org.roundsman.measure.Values;
import org.roundsman.readings.BoardQuery.Sort;
import org.roundsman.readings.HistoryLoad.DeviceQuarter;
import org.roundsman.readings.HistoryLoad.NetworkQuarter;
import org.roundsman.readings.HistoryLoad.PastSpan;
import org.roundsman.readings.HistoryLoad.RadioQuarter;
import org.roundsman.readings.rollup.RollUp;
import org.roundsman.readings.spans.Touched;
import org.roundsman.readings.store.ReadingWriter;
import org.roundsman.readings.store.WriterListener;
import org.roundsman.readings.store.WriterSettings;

/**
 * Measures loading of history, the writer, roll-ups and the questions behind the fleet view, on a PostgreSQL with fsync
 * on. Arguments: number of access points (10000), rounds of each to write (20).
 */
public final class ReadingsBenchmark {

    private static final int PER_SITE = 16;
    private static final Clock CLOCK = Clock.systemUTC();

    private final DataSource source;
    private final int accessPoints;
    private final Instant quarter = Instant.ofEpochMilli(Touched.quarter(CLOCK.millis()));
    private final List<Long> devices = new ArrayList<>();

    private ReadingsBenchmark(DataSource source, int accessPoints) {
        this.source = source;
        this.accessPoints = accessPoints;
    }

    public static void main(String[] arguments) throws Exception {
        int accessPoints = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 10_000;
        int rounds = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 20;
        Path folder = Files.createTempDirectory("readings-benchmark");
        try (EmbeddedPostgres postgres = EmbeddedPostgres.builder()
                .setDataDirectory(folder.resolve("data"))
                .setServerConfig("fsync", "on")
                .setServerConfig("synchronous_commit", "on")
                .setServerConfig("shared_buffers", "512MB")
                .setServerConfig("max_wal_size", "4GB")
                .start()) {
            DataSource source = postgres.getPostgresDatabase();
            Flyway.configure()
                    .dataSource(source)
                    .locations("classpath:db/migration")
                    .load()
                    .migrate();
            ReadingsBenchmark benchmark = new ReadingsBenchmark(source, accessPoints);
            benchmark.makeFleet();
            benchmark.loadDay();
            benchmark.write(rounds, folder.resolve("spool"));
            benchmark.rollUp();
            benchmark.ask();
        }
    }

    private void makeFleet() {
        ReadingsFixture fixture = new ReadingsFixture(source);
        int sites = (accessPoints + PER_SITE - 1) / PER_SITE;
        long first =
                fixture.accessPoint(fixture.site(fixture.customer("Customer 0"), "Site 0", "Europe/Berlin"), "ap 0");
        fixture.run("insert into customer (name) select 'Customer ' || n from generate_series(1, ?) n", sites / 10);
        fixture.run(
                "insert into site (customer_id, name, time_zone) select 1 + n % (select max(id) from customer),"
                        + " 'Site ' || n, 'Europe/Berlin' from generate_series(1, ?) n",
                sites - 1);
        fixture.run(
                "insert into device (site_id, kind, name, host, credential_id) select 1 + n / ?, 'ACCESS_POINT', 'ap ' || n,"
                        + " 'ap' || n || '.example', (select min(id) from credential) from generate_series(1, ?) n",
                PER_SITE,
                accessPoints - 1);
        fixture.run("insert into device_fact select id, f, f || id, now() from device, unnest(array['SERIAL', 'MODEL',"
                + " 'FIRMWARE', 'NAME']) f");
        devices.addAll(fixture.ids("select id from device order by id"));
        say("fleet: %d access points at %d sites, first id %d", devices.size(), sites, first);
    }

    private void loadDay() {
        HistoryLoad load = new HistoryLoad(source, CLOCK);
        long rows = 0;
        long began = System.nanoTime();
        Instant from = quarter.minus(Duration.ofDays(1));
        for (Instant at = from; at.isBefore(quarter); at = at.plus(Duration.ofHours(2))) {
            List<DeviceQuarter> quarters = new ArrayList<>();
            for (int i = 0; i < 8; i++) {
                Instant start = at.plus(Duration.ofMinutes(15L * i));
                devices.forEach(device -> quarters.add(past(device, start)));
            }
            Instant begin = at;
            load.load(
                    quarters,
                    devices.stream()
                            .map(device -> new PastSpan(
                                    device,
                                    begin,
                                    begin.plus(Duration.ofHours(2)),
                                    device % 9 == 0 ? Condition.SILENT : Condition.ANSWERING))
                            .toList());
            rows += quarters.size() * 5L;
        }
        rate("history", rows, "rows", began);
    }

    private static DeviceQuarter past(long device, Instant at) {
        double clients = (device * 7 + at.getEpochSecond() / 900) % 40;
        Values own = Values.builder(Subject.DEVICE)
                .set(Metric.CLIENTS, clients)
                .set(Metric.CPU, 20)
                .set(Metric.MEMORY, 40)
                .set(Metric.ROUND_TRIP, 3)
                .set(Metric.PORT_IN, 1e6)
                .set(Metric.PORT_OUT, 2e6)
                .build();
        Values radio = Values.builder(Subject.RADIO)
                .set(Metric.RADIO_CLIENTS, clients / 2)
                .set(Metric.UTILISATION, clients * 2)
                .set(Metric.NOISE, -95)
                .set(Metric.RETRIES, 4)
                .build();
        Values network = Values.builder(Subject.NETWORK)
                .set(Metric.NETWORK_CLIENTS, clients / 2)
                .build();
        return new DeviceQuarter(
                device,
                at,
                15,
                own,
                List.of(new RadioQuarter(1, radio, radio), new RadioQuarter(2, radio, radio)),
                List.of(new NetworkQuarter("Staff", network), new NetworkQuarter("Guest", network)));
    }

    private void write(int rounds, Path spool) throws Exception {
        long[] rows = new long[2];
        WriterListener counting = new WriterListener() {
            @Override
            public void stored(org.roundsman.readings.store.BatchStore.Stored batch, long nanoseconds) {
                rows[0] += batch.rows();
                rows[1] += batch.readings();
            }
        };
        try (ReadingWriter writer = new ReadingWriter(source, CLOCK, WriterSettings.in(spool), counting).start()) {
            // the first round makes partitions and reads the directory
            devices.forEach(device -> writer.accept(answered(device, quarter, 5, 30)));
            drained(writer);
            rows[0] = 0;
            rows[1] = 0;
            long began = System.nanoTime();
            for (int round = 1; round < rounds; round++) {
                for (long device : devices) {
                    while (writer.backlog().queued() > 15_000) {
                        Thread.onSpinWait();
                    }
                    writer.accept(answered(device, quarter.plusSeconds(60L * round), round % 40, 30));
                }
            }
            drained(writer);
            rate("writer", rows[1], "readings", began);
            rate("writer", rows[0], "rows", began);
            say(
                    "writer: spilled %d, lost %d",
                    writer.backlog().spilled(), writer.backlog().lost());
        }
    }

    private static void drained(ReadingWriter writer) {
        while (writer.backlog().queued() > 0 || writer.backlog().spilled() > 0) {
            Thread.onSpinWait();
        }
    }

    private void rollUp() throws Exception {
        RollUp rollUp = new RollUp(source, CLOCK, Duration.ofMinutes(15));
        try (Connection connection = source.getConnection();
                var statement = connection.createStatement()) {
            long began = System.nanoTime();
            int quarters = rollUp.run();
            say("roll-up: %d quarter hours in %.0f ms", quarters, millis(began));
            statement.execute("insert into rollup_mark (quarter) values ('" + quarter + "')");
            began = System.nanoTime();
            rollUp.run();
            say("roll-up: the same quarter hour once more in %.0f ms", millis(began));
            statement.execute("update day_mark set due_at = '2000-01-01 00:00+00'");
            began = System.nanoTime();
            rollUp.run();
            say("roll-up: all days in %.0f ms", millis(began));
            statement.execute("vacuum analyze");
        }
    }

    private void ask() throws Exception {
        CustomerScope all = CustomerScope.everyone();
        // asked as of the last round, since the written rounds lie partly in the future
        Clock clock = Clock.fixed(quarter.plusSeconds(60), java.time.ZoneOffset.UTC);
        FleetBoard board = new FleetBoard(
                source, clock, () -> new Backlog(0, 0, 0, Optional.empty(), Optional.empty(), Optional.empty()));
        time("totals", () -> board.totals(all));
        for (Sort sort : Sort.values()) {
            time("50 devices by " + sort, () -> board.devices(all, query("", sort, 1)));
            time("50 sites by " + sort, () -> board.sites(all, query("", sort, 1)));
        }
        time("50 devices, page 150", () -> board.devices(all, query("", Sort.NAME, 150)));
        time("50 devices by words", () -> board.devices(all, query("site ap 99", Sort.NAME, 1)));
        time("50 sites by words", () -> board.sites(all, query("serial99", Sort.NAME, 1)));
        time("one device", () -> board.device(all, devices.get(devices.size() / 2)));
        time("one site", () -> board.site(all, 3));
        DeviceHistory history = ReadingsFixture.history(source);
        time(
                "a day of one radio",
                () -> history.ofRadio(
                        devices.get(7),
                        1,
                        Metric.UTILISATION,
                        quarter.minus(Duration.ofDays(1)),
                        quarter,
                        Duration.ofMinutes(15)));
    }

    private static BoardQuery query(String words, Sort sort, int page) {
        return new BoardQuery(
                words,
                Optional.empty(),
                Optional.empty(),
                Optional.<DeviceKind>empty(),
                Set.of(),
                sort,
                false,
                page,
                50);
    }

    private static void time(String what, Callable<?> question) throws Exception {
        double[] took = new double[15];
        for (int i = 0; i < took.length; i++) {
            long began = System.nanoTime();
            question.call();
            took[i] = millis(began);
        }
        double first = took[0];
        Arrays.sort(took);
        say("ask: %-28s first %6.1f ms, median %6.1f ms, slowest %6.1f ms", what, first, took[7], took[14]);
    }

    private static void rate(String what, long count, String of, long began) {
        double seconds = millis(began) / 1000;
        say("%s: %d %s in %.1f s = %.0f %s/s", what, count, of, seconds, count / seconds, of);
    }

    private static double millis(long began) {
        return (System.nanoTime() - began) / 1e6;
    }

    private static void say(String text, Object... values) {
        System.out.printf(text + "%n", values);
    }
}
