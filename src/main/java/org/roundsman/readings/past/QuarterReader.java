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
import java.util.TreeMap;
import java.util.function.Consumer;
import org.roundsman.measure.Metric;
import org.roundsman.measure.NetworkReading;
import org.roundsman.measure.Outcome;
import org.roundsman.measure.RadioReading;
import org.roundsman.measure.Reading;
import org.roundsman.measure.Subject;
import org.roundsman.measure.Values;
import org.roundsman.readings.rollup.RolledTable;
import org.roundsman.readings.sql.Sql;

/**
 * Makes readings from quarter hours, for times of which no raw readings are kept: two for each, one at its begin and one at
 * its end, both with the means. What is not rolled up is missing from them.
 */
public final class QuarterReader {

    private static final int QUARTER_SECONDS = 900;
    private static final String WHERE =
            " where q.device_id = any(?) and q.at >= ?::timestamptz and q.at < ?::timestamptz";

    private final Connection connection;
    private final Instant from;
    private final Instant to;

    /** Quarter hours that begin from a time on and before another. */
    public QuarterReader(Connection connection, Instant from, Instant to) {
        this.connection = connection;
        this.from = from;
        this.to = to;
    }

    /** A quarter hour of one device, being put together. */
    private static final class Quarter {
        private Values device = Values.none(Subject.DEVICE);
        private final List<RadioReading> radios = new ArrayList<>(3);
        private final List<NetworkReading> networks = new ArrayList<>(3);

        Reading at(long device, Instant at) {
            return new Reading(
                    device, at, Outcome.ANSWERED, QUARTER_SECONDS, this.device, radios, networks, Optional.empty());
        }
    }

    private interface Taker {
        void row(ResultSet row, Quarter quarter) throws SQLException;
    }

    /**
     * Hands over readings made from quarter hours: device by device, each in time order.
     *
     * @param untils by device: only quarter hours that end by then; a device without one has no raw readings
     */
    public void each(Collection<Long> devices, Set<Subject> parts, Map<Long, Instant> untils, Consumer<Reading> taker)
            throws SQLException {
        Map<Long, TreeMap<Instant, Quarter>> all = new HashMap<>();
        rows(
                all,
                devices,
                "select q.* from quarter_device q",
                (row, quarter) -> quarter.device = means(row, RolledTable.DEVICE, Subject.DEVICE));
        if (parts.contains(Subject.RADIO)) {
            rows(
                    all,
                    devices,
                    "select q.* from quarter_radio q",
                    (row, quarter) -> quarter.radios.add(
                            new RadioReading(row.getInt("number"), means(row, RolledTable.RADIO, Subject.RADIO))));
        }
        if (parts.contains(Subject.NETWORK)) {
            rows(
                    all,
                    devices,
                    "select q.*, n.ssid from quarter_network q join network n on n.id = q.network_id",
                    (row, quarter) -> quarter.networks.add(new NetworkReading(
                            row.getString("ssid"), means(row, RolledTable.NETWORK, Subject.NETWORK))));
        }
        for (long device : devices) {
            Instant until = untils.getOrDefault(device, Instant.MAX);
            all.getOrDefault(device, new TreeMap<>()).forEach((at, quarter) -> {
                Instant end = at.plusSeconds(QUARTER_SECONDS);
                if (!end.isAfter(until)) {
                    taker.accept(quarter.at(device, at));
                    taker.accept(quarter.at(device, end));
                }
            });
        }
    }

    private void rows(Map<Long, TreeMap<Instant, Quarter>> all, Collection<Long> devices, String select, Taker taker)
            throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(select + WHERE)) {
            statement.setFetchSize(2_000);
            Sql.fill(statement, Sql.ids(connection, devices), Sql.time(from), Sql.time(to));
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    Instant at = Instant.ofEpochMilli(Sql.millis(row, "at"));
                    taker.row(
                            row,
                            all.computeIfAbsent(row.getLong("device_id"), id -> new TreeMap<>())
                                    .computeIfAbsent(at, time -> new Quarter()));
                }
            }
        }
    }

    private static Values means(ResultSet row, RolledTable table, Subject subject) throws SQLException {
        Values.Builder values = Values.builder(subject);
        for (Metric metric : table.metrics()) {
            double mean = row.getDouble(metric.column() + "_mean");
            if (!row.wasNull()) {
                values.set(metric, mean);
            }
        }
        return values.build();
    }
}
