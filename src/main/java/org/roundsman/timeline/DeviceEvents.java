package org.roundsman.timeline;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.ZoneOffset;
import java.util.List;
import org.roundsman.system.StorableText;

/** Writes events in the transaction of whoever saw them. */
public final class DeviceEvents {

    private static final int LONGEST_DETAIL = 8_000;

    private DeviceEvents() {}

    /** Adds the events of devices that are still there; those of others are dropped. */
    public static void add(Connection connection, List<DeviceEvent> events) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(
                "insert into device_event (device_id, at, kind, title, old_value, new_value, detail)"
                        + " select id, ?, ?, ?, ?, ?, ? from device where id = ?")) {
            for (DeviceEvent event : events) {
                statement.setObject(1, event.at().atOffset(ZoneOffset.UTC));
                statement.setString(2, event.kind().name());
                statement.setString(3, storable(event.title()));
                statement.setString(4, storable(event.old()));
                statement.setString(5, storable(event.fresh()));
                statement.setString(6, storable(event.detail()));
                statement.setLong(7, event.deviceId());
                statement.addBatch();
            }
            statement.executeBatch();
        }
    }

    /** PostgreSQL text holds every character but U+0000. */
    private static String storable(String text) {
        String cut = text.length() > LONGEST_DETAIL ? text.substring(0, LONGEST_DETAIL) + "…" : text;
        return StorableText.of(cut);
    }
}
