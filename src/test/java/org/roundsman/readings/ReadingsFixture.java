package org.roundsman.readings;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.sql.DataSource;
import org.roundsman.measure.Metric;
import org.roundsman.measure.NetworkReading;
import org.roundsman.measure.Outcome;
import org.roundsman.measure.RadioReading;
import org.roundsman.measure.Reading;
import org.roundsman.measure.Subject;
import org.roundsman.measure.Values;
import org.roundsman.planned.PlannedWork;
import org.roundsman.readings.store.WriterSettings;

/** Invented customers, sites and devices in a database, and readings of them. */
public final class ReadingsFixture {

    private final DataSource source;

    public ReadingsFixture(DataSource source) {
        this.source = source;
    }

    public long customer(String name) {
        return id("insert into customer (name) values (?) returning id", name);
    }

    public long site(long customer, String name, String zone) {
        return id(
                "insert into site (customer_id, name, time_zone) values (?, ?, ?) returning id", customer, name, zone);
    }

    public long accessPoint(long site, String name) {
        return device(site, name, "ACCESS_POINT");
    }

    public long device(long site, String name, String kind) {
        return id(
                "insert into device (site_id, kind, name, host, credential_id) values (?, ?, ?, ?, ?) returning id",
                site,
                kind,
                name,
                name + ".example",
                credential());
    }

    private long credential() {
        List<Long> found = ids("select id from credential limit 1");
        return found.isEmpty()
                ? id("insert into credential (name, version, community) values ('test', 2, '\\x00') returning id")
                : found.get(0);
    }

    public long id(String sql, Object... parameters) {
        return ids(sql, parameters).get(0);
    }

    public List<Long> ids(String sql, Object... parameters) {
        return rows(sql, parameters).stream()
                .map(row -> ((Number) row.get(0)).longValue())
                .toList();
    }

    /** All rows of a question, each as a list of its columns. */
    public List<List<Object>> rows(String sql, Object... parameters) {
        try (Connection connection = source.getConnection();
                var statement = connection.prepareStatement(sql)) {
            for (int i = 0; i < parameters.length; i++) {
                statement.setObject(i + 1, parameters[i]);
            }
            try (ResultSet row = statement.executeQuery()) {
                List<List<Object>> rows = new ArrayList<>();
                while (row.next()) {
                    List<Object> columns = new ArrayList<>();
                    for (int i = 1; i <= row.getMetaData().getColumnCount(); i++) {
                        columns.add(row.getObject(i));
                    }
                    rows.add(columns);
                }
                return rows;
            }
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    public void run(String sql, Object... parameters) {
        try (Connection connection = source.getConnection();
                var statement = connection.prepareStatement(sql)) {
            for (int i = 0; i < parameters.length; i++) {
                statement.setObject(i + 1, parameters[i]);
            }
            statement.execute();
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    /** The past of devices in that database. */
    public static DeviceHistory history(DataSource source) {
        return new DeviceHistory(source, new PlannedWork(source, Clock.systemUTC()));
    }

    public long count(String table) {
        return id("select count(*) from " + table);
    }

    /** Settings that make the writer quick, as tests wait for it. */
    public static WriterSettings quick(Path spool) {
        return new WriterSettings(
                20_000, 2_000, Duration.ofMillis(10), spool, 64L << 20, Duration.ofMillis(50), Duration.ofMillis(200));
    }

    /** An answered round with two radios, one network and so many clients; the second radio is the busier one. */
    public static Reading answered(long device, Instant at, int clients, double utilisation) {
        return new Reading(
                device,
                at,
                Outcome.ANSWERED,
                60,
                Values.builder(Subject.DEVICE)
                        .set(Metric.ROUND_TRIP, 1.5)
                        .set(Metric.UPTIME, 86_400)
                        .set(Metric.CPU, 12.5)
                        .set(Metric.CLIENTS, clients)
                        .set(Metric.PORT_IN, 1e6)
                        .build(),
                List.of(radio(1, clients / 2, utilisation / 2), radio(2, clients - clients / 2, utilisation)),
                List.of(new NetworkReading(
                        "Staff",
                        Values.builder(Subject.NETWORK)
                                .set(Metric.NETWORK_CLIENTS, clients)
                                .build())),
                Optional.empty());
    }

    private static RadioReading radio(int number, int clients, double utilisation) {
        return new RadioReading(
                number,
                Values.builder(Subject.RADIO)
                        .set(Metric.BAND, number == 1 ? 2.4 : 5)
                        .set(Metric.CHANNEL, number == 1 ? 6 : 36)
                        .set(Metric.NOISE, -95)
                        .set(Metric.RADIO_CLIENTS, clients)
                        .set(Metric.UTILISATION, utilisation)
                        .build());
    }

    public static Reading silent(long device, Instant at) {
        return Reading.empty(device, at, Outcome.NO_REPLY, 60);
    }

    public static Reading refused(long device, Instant at) {
        return Reading.empty(device, at, Outcome.WRONG_DIGEST, 60);
    }
}
