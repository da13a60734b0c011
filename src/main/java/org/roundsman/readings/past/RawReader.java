package org.roundsman.readings.past;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import org.roundsman.measure.Metric;
import org.roundsman.measure.NetworkReading;
import org.roundsman.measure.Outcome;
import org.roundsman.measure.RadioReading;
import org.roundsman.measure.Reading;
import org.roundsman.measure.Subject;
import org.roundsman.measure.Values;
import org.roundsman.readings.sql.Sql;

/** Puts readings together again from the raw tables, without facts. */
public final class RawReader {

    private static final String WHERE =
            " where r.device_id = any(?) and r.at >= ?::timestamptz and r.at < ?::timestamptz";
    private static final String DEVICES = "select r.* from reading_device r" + WHERE + " order by r.device_id, r.at";
    private static final String RADIOS =
            "select r.* from reading_radio r" + WHERE + " order by r.device_id, r.at, r.number";
    private static final String NETWORKS = "select r.device_id, r.at, n.ssid, r.clients from reading_network r"
            + " join network n on n.id = r.network_id" + WHERE + " order by r.device_id, r.at, n.ssid";
    private static final int FETCH = 2_000;

    private final Connection connection;
    private final Instant from;
    private final Instant to;

    /** Readings from a time on and before another; the connection must not commit by itself. */
    public RawReader(Connection connection, Instant from, Instant to) {
        this.connection = connection;
        this.from = from;
        this.to = to;
    }

    private record Key(long device, long at) {
        static Key of(ResultSet row) throws SQLException {
            return new Key(row.getLong("device_id"), Sql.millis(row, "at"));
        }
    }

    private interface Taker {
        void row(ResultSet row) throws SQLException;
    }

    /**
     * Hands over the readings of these devices: device by device, each in time order.
     *
     * @param parts what is wanted besides the device's own figures
     */
    public void each(Collection<Long> devices, Set<Subject> parts, Consumer<Reading> taker) throws SQLException {
        Map<Key, List<RadioReading>> radios = new HashMap<>();
        Map<Key, List<NetworkReading>> networks = new HashMap<>();
        if (parts.contains(Subject.RADIO)) {
            rows(RADIOS, devices, row -> radios.computeIfAbsent(Key.of(row), key -> new ArrayList<>(3))
                    .add(new RadioReading(row.getInt("number"), values(row, Subject.RADIO))));
        }
        if (parts.contains(Subject.NETWORK)) {
            rows(NETWORKS, devices, row -> networks.computeIfAbsent(Key.of(row), key -> new ArrayList<>(3))
                    .add(new NetworkReading(row.getString("ssid"), values(row, Subject.NETWORK))));
        }
        rows(DEVICES, devices, row -> {
            Key key = Key.of(row);
            taker.accept(new Reading(
                    key.device,
                    Instant.ofEpochMilli(key.at),
                    Outcome.ofCode(row.getInt("outcome")),
                    row.getInt("next_in_s"),
                    values(row, Subject.DEVICE),
                    radios.getOrDefault(key, List.of()),
                    networks.getOrDefault(key, List.of()),
                    Optional.empty()));
        });
    }

    /** When the first raw reading of each device was made, as far as one is kept. */
    public Map<Long, Instant> firsts(Collection<Long> devices) throws SQLException {
        Map<Long, Instant> firsts = new HashMap<>();
        rows(
                "select r.device_id, min(r.at) at from reading_device r" + WHERE + " group by r.device_id",
                devices,
                row -> firsts.put(row.getLong(1), Instant.ofEpochMilli(Sql.millis(row, "at"))));
        return firsts;
    }

    private void rows(String sql, Collection<Long> devices, Taker taker) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(sql)) {
            statement.setFetchSize(FETCH);
            Sql.fill(statement, Sql.ids(connection, devices), Sql.time(from), Sql.time(to));
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    taker.row(row);
                }
            }
        }
    }

    /** Figures were stored in fewer octets than they came in, so 2.4 is read back as the text 2.4 says. */
    private static Values values(ResultSet row, Subject subject) throws SQLException {
        Values.Builder values = Values.builder(subject);
        for (Metric metric : Metric.of(subject)) {
            Object value = row.getObject(metric.column());
            if (value instanceof Float narrow) {
                values.set(metric, Double.parseDouble(narrow.toString()));
            } else if (value instanceof Number number) {
                values.set(metric, number.doubleValue());
            }
        }
        return values.build();
    }
}
