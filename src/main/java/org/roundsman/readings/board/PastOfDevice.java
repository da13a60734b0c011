package org.roundsman.readings.board;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.roundsman.measure.Condition;
import org.roundsman.measure.Metric;
import org.roundsman.measure.NetworkReading;
import org.roundsman.measure.Outcome;
import org.roundsman.measure.RadioReading;
import org.roundsman.measure.Reading;
import org.roundsman.measure.Subject;
import org.roundsman.measure.Values;
import org.roundsman.readings.Series;
import org.roundsman.readings.Span;
import org.roundsman.readings.rollup.RolledTable;
import org.roundsman.readings.spans.Touched;
import org.roundsman.readings.sql.Sql;

/** Questions about one device over time. */
public final class PastOfDevice {

    private final Connection connection;
    private final long device;

    public PastOfDevice(Connection connection, long device) {
        this.connection = connection;
        this.device = device;
    }

    private interface RowReader<T> {
        T read(ResultSet row) throws SQLException;
    }

    private <T> List<T> read(String sql, RowReader<T> reader, Object... parameters) throws SQLException {
        List<T> found = new ArrayList<>();
        try (var statement = connection.prepareStatement(sql)) {
            Sql.fill(statement, parameters);
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    found.add(reader.read(row));
                }
            }
        }
        return found;
    }

    /** The last answered reading that is kept, without facts. */
    public Optional<Reading> lastAnswered() throws SQLException {
        // partitions are cut by time, so the one of that time alone is visited
        List<OffsetDateTime> last = read(
                "select last_answered_at from device_now where device_id = ? and last_answered_at is not null",
                row -> row.getObject(1, OffsetDateTime.class),
                device);
        if (last.isEmpty()) {
            return Optional.empty();
        }
        OffsetDateTime at = last.get(0);
        List<RadioReading> radios = read(
                "select * from reading_radio where device_id = ? and at = ? order by number",
                row -> new RadioReading(row.getInt("number"), values(row, Subject.RADIO)),
                device,
                at);
        List<NetworkReading> networks = read(
                "select n.ssid, r.clients from reading_network r join network n on n.id = r.network_id"
                        + " where r.device_id = ? and r.at = ? order by n.ssid",
                row -> new NetworkReading(row.getString("ssid"), values(row, Subject.NETWORK)),
                device,
                at);
        return read(
                        "select * from reading_device where device_id = ? and at = ?",
                        row -> new Reading(
                                device,
                                at.toInstant(),
                                Outcome.ofCode(row.getInt("outcome")),
                                row.getInt("next_in_s"),
                                values(row, Subject.DEVICE),
                                radios,
                                networks,
                                Optional.empty()),
                        device,
                        at)
                .stream()
                .findFirst();
    }

    /** Figures were stored in fewer octets than they came in, so 2.4 is read back as the text 2.4 says. */
    private static Values values(ResultSet row, Subject subject) throws SQLException {
        Values.Builder values = Values.builder(subject);
        for (Metric metric : Metric.of(subject)) {
            String text = row.getString(metric.column());
            if (text != null) {
                values.set(metric, Double.parseDouble(text));
            }
        }
        return values.build();
    }

    /**
     * A metric from the quarter hours.
     *
     * @param part number of the radio or SSID of the network, null for the device
     */
    public List<Series.Point> points(Metric metric, Object part, Instant from, Instant to, Duration step)
            throws SQLException {
        RolledTable table = RolledTable.valueOf(metric.subject().name());
        String c = metric.column();
        Instant start = Instant.ofEpochMilli(Touched.quarter(from.toEpochMilli()));
        String which =
                switch (table) {
                    case DEVICE -> "";
                    case RADIO -> " and q.number = ?";
                    case NETWORK ->
                        " and q.network_id = (select n.id from network n join device d on d.site_id ="
                                + " n.site_id where d.id = q.device_id and n.ssid = ?)";
                };
        String sql = "select date_bin(? * interval '1 second', q.at, ?::timestamptz) bucket, sum(q." + c
                + "_n) n, min(q."
                + c + "_min) least, sum(q." + c + "_mean::float8 * q." + c + "_n) / sum(q." + c + "_n) mean, max(q." + c
                + "_max) most from " + table.quarterTable()
                + " q where q.device_id = ? and q.at >= ?::timestamptz and q.at < ?::timestamptz and q." + c + "_n > 0"
                + which + " group by 1 order by 1";
        List<Object> parameters =
                new ArrayList<>(List.of(step.toSeconds(), Sql.time(start), device, Sql.time(start), Sql.time(to)));
        if (part != null) {
            parameters.add(part);
        }
        return read(
                sql,
                row -> new Series.Point(
                        Instant.ofEpochMilli(Sql.millis(row, "bucket")),
                        row.getInt("n"),
                        row.getDouble("least"),
                        row.getDouble("mean"),
                        row.getDouble("most")),
                parameters.toArray());
    }

    public List<Span> spans(Instant from, Instant to) throws SQLException {
        return read(
                "select from_at, to_at, condition, outcome from span where device_id = ? and from_at < ?::timestamptz"
                        + " and (to_at is null or to_at > ?::timestamptz) order by from_at",
                PastOfDevice::span,
                device,
                Sql.time(to),
                Sql.time(from));
    }

    private static Span span(ResultSet row) throws SQLException {
        OptionalInt outcome = Sql.whole(row, "outcome");
        return new Span(
                Instant.ofEpochMilli(Sql.millis(row, "from_at")),
                Sql.instant(row, "to_at"),
                Condition.ofCode(row.getInt("condition")),
                outcome.isEmpty() ? Optional.empty() : Optional.of(Outcome.ofCode(outcome.getAsInt())));
    }

    /** When the next round is due: a span that goes on reaches there. Empty before the first round. */
    public Optional<Instant> known() throws SQLException {
        return read(
                        "select last_round_at + next_in_s * interval '1 second' from device_now where device_id = ?",
                        row -> row.getObject(1, OffsetDateTime.class).toInstant(),
                        device)
                .stream()
                .findFirst();
    }
}
