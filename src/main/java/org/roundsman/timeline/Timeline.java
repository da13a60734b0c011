package org.roundsman.timeline;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import javax.sql.DataSource;
import org.roundsman.shared.Page;

/** Reads and adds what happened to devices. Callers check the customer scope through the fleet first. */
@ApplicationScoped
public class Timeline {

    private final DataSource database;

    @Inject
    Timeline(DataSource database) {
        this.database = database;
    }

    /** Adds events, in the transaction of this thread if there is one. */
    public void add(List<DeviceEvent> events) {
        try (Connection connection = database.getConnection()) {
            DeviceEvents.add(connection, events);
        } catch (SQLException e) {
            throw new IllegalStateException("Events could not be written: " + e.getMessage(), e);
        }
    }

    /** The latest events of a device, newest first, at most so many. */
    public List<DeviceEvent> latest(long deviceId, int most) {
        return read(deviceId, null, most, 0);
    }

    /**
     * One page of the events of a device, newest first.
     *
     * @param kind only of this sort; null for all
     * @param number from 1; beyond the end the last page comes
     */
    public Page<DeviceEvent> page(long deviceId, EventKind kind, int number, int size) {
        long total = counts(deviceId).entrySet().stream()
                .filter(count -> kind == null || kind == count.getKey())
                .mapToLong(Map.Entry::getValue)
                .sum();
        int last = (int) Math.max(1, (total + size - 1) / size);
        int shown = Math.max(1, Math.min(number, last));
        return new Page<>(read(deviceId, kind, size, (long) (shown - 1) * size), shown, size, total);
    }

    /** How many events of each sort a device has; sorts without any are left out. */
    public Map<EventKind, Long> counts(long deviceId) {
        Map<EventKind, Long> counts = new EnumMap<>(EventKind.class);
        ask(
                "select kind, count(*) from device_event where device_id = ? group by kind",
                statement -> statement.setLong(1, deviceId),
                row -> counts.put(EventKind.valueOf(row.getString(1)), row.getLong(2)));
        return counts;
    }

    /** A number that grows with each event of the device; 0 while there is none. Cheap enough to be asked every second. */
    public long last(long deviceId) {
        long[] last = {0};
        ask(
                "select id from device_event where device_id = ? order by id desc limit 1",
                statement -> statement.setLong(1, deviceId),
                row -> last[0] = row.getLong(1));
        return last[0];
    }

    private List<DeviceEvent> read(long deviceId, EventKind kind, int most, long after) {
        List<DeviceEvent> events = new ArrayList<>();
        ask(
                "select device_id, at, kind, title, old_value, new_value, detail from device_event where device_id = ?"
                        + " and (?::text is null or kind = ?) order by at desc, id desc limit ? offset ?",
                statement -> {
                    statement.setLong(1, deviceId);
                    statement.setString(2, kind == null ? null : kind.name());
                    statement.setString(3, kind == null ? null : kind.name());
                    statement.setInt(4, most);
                    statement.setLong(5, after);
                },
                row -> events.add(event(row)));
        return events;
    }

    private interface Filling {
        void into(PreparedStatement statement) throws SQLException;
    }

    private interface Reader {
        void read(ResultSet row) throws SQLException;
    }

    private void ask(String sql, Filling filling, Reader reader) {
        try (Connection connection = database.getConnection();
                PreparedStatement statement = connection.prepareStatement(sql)) {
            filling.into(statement);
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    reader.read(row);
                }
            }
        } catch (SQLException e) {
            throw new IllegalStateException("Events could not be read: " + e.getMessage(), e);
        }
    }

    /** The event in that row, which holds every column of one but its id. */
    static DeviceEvent event(ResultSet row) throws SQLException {
        return new DeviceEvent(
                row.getLong("device_id"),
                row.getObject("at", OffsetDateTime.class).toInstant(),
                EventKind.valueOf(row.getString("kind")),
                row.getString("title"),
                row.getString("old_value"),
                row.getString("new_value"),
                row.getString("detail"));
    }
}
