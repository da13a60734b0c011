package org.roundsman.timeline;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import javax.sql.DataSource;

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
        try (Connection connection = database.getConnection();
                PreparedStatement statement = connection.prepareStatement(
                        "select device_id, at, kind, title, old_value, new_value, detail from device_event"
                                + " where device_id = ? order by at desc, id desc limit ?")) {
            statement.setLong(1, deviceId);
            statement.setInt(2, most);
            List<DeviceEvent> events = new ArrayList<>();
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    events.add(event(row));
                }
            }
            return events;
        } catch (SQLException e) {
            throw new IllegalStateException("Events could not be read: " + e.getMessage(), e);
        }
    }

    private static DeviceEvent event(ResultSet row) throws SQLException {
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
