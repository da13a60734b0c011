package org.roundsman.traps;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import javax.sql.DataSource;

/**
 * Notifications that neither a standard nor a profile names: counted per device, with the last one's OID. Counts gather in
 * memory and are written now and then. Thread-safe.
 */
@ApplicationScoped
public class UnnamedNotifications {

    private final DataSource database;
    private Map<Long, Unnamed> gathered = new TreeMap<>();

    @Inject
    UnnamedNotifications(DataSource database) {
        this.database = database;
    }

    /** Notifications of one device without a name. */
    public record Unnamed(long count, Instant first, Instant last, String lastOid) {
        Unnamed plus(Unnamed later) {
            return new Unnamed(count + later.count, first, later.last, later.lastOid);
        }
    }

    synchronized void count(long device, String oid, Instant at) {
        gathered.merge(device, new Unnamed(1, at, at, oid), Unnamed::plus);
    }

    private synchronized Map<Long, Unnamed> take() {
        Map<Long, Unnamed> taken = gathered;
        gathered = new TreeMap<>();
        return taken;
    }

    private synchronized void giveBack(Map<Long, Unnamed> taken) {
        gathered.forEach((device, later) -> taken.merge(device, later, Unnamed::plus));
        gathered = taken;
    }

    /** Writes what has gathered; when that fails, it stays for the next time. */
    void write() throws SQLException {
        Map<Long, Unnamed> taken = take();
        if (taken.isEmpty()) {
            return;
        }
        boolean written = false;
        try {
            write(taken);
            written = true;
        } finally {
            if (!written) {
                giveBack(taken);
            }
        }
    }

    /** One statement, so that all of it is written or nothing. */
    private void write(Map<Long, Unnamed> taken) throws SQLException {
        try (Connection connection = database.getConnection();
                PreparedStatement statement = connection.prepareStatement(
                        "insert into device_notification as n (device_id, count, first_at, last_at, last_oid) select"
                                + " d.id, t.count, t.first_at, t.last_at, t.last_oid from unnest(?::bigint[], ?::bigint[],"
                                + " ?::timestamptz[], ?::timestamptz[], ?::text[]) t (device_id, count, first_at, last_at,"
                                + " last_oid) join device d on d.id = t.device_id on conflict (device_id) do update set"
                                + " count = n.count + excluded.count, last_at = excluded.last_at, last_oid ="
                                + " excluded.last_oid")) {
            List<Unnamed> counts = List.copyOf(taken.values());
            array(statement, 1, "bigint", taken.keySet().stream());
            array(statement, 2, "bigint", counts.stream().map(Unnamed::count));
            array(statement, 3, "timestamptz", counts.stream().map(c -> c.first()
                    .toString()));
            array(statement, 4, "timestamptz", counts.stream().map(c -> c.last().toString()));
            array(statement, 5, "text", counts.stream().map(Unnamed::lastOid));
            statement.executeUpdate();
        }
    }

    private static void array(PreparedStatement statement, int place, String type, Stream<?> values)
            throws SQLException {
        statement.setArray(place, statement.getConnection().createArrayOf(type, values.toArray()));
    }

    /** Those of a device. Callers check the customer scope through the fleet first. */
    public Optional<Unnamed> of(long deviceId) {
        try (Connection connection = database.getConnection();
                PreparedStatement statement = connection.prepareStatement(
                        "select count, first_at, last_at, last_oid from device_notification where device_id = ?")) {
            statement.setLong(1, deviceId);
            try (ResultSet row = statement.executeQuery()) {
                return row.next()
                        ? Optional.of(new Unnamed(row.getLong(1), at(row, 2), at(row, 3), row.getString(4)))
                        : Optional.empty();
            }
        } catch (SQLException e) {
            throw new IllegalStateException("Counts of notifications could not be read: " + e.getMessage(), e);
        }
    }

    private static Instant at(ResultSet row, int column) throws SQLException {
        return row.getObject(column, OffsetDateTime.class).toInstant();
    }
}
