package org.roundsman.timeline;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import javax.sql.DataSource;

/** Reads what happened to a device piece by piece. Callers check the customer scope through the fleet first. */
@ApplicationScoped
public class EventSearch {

    private final DataSource database;

    @Inject
    EventSearch(DataSource database) {
        this.database = database;
    }

    /**
     * An event with its number, which tells it from every other.
     *
     * @param id grows in the order in which events were noted
     */
    public record Numbered(long id, DeviceEvent event) {}

    /**
     * What happened to any of these devices in that time, newest first: the latest so many.
     *
     * @param to exclusive
     */
    public List<DeviceEvent> between(Collection<Long> deviceIds, Instant from, Instant to, int most) {
        try (Connection connection = database.getConnection();
                PreparedStatement statement = connection.prepareStatement(
                        "select device_id, at, kind, title, old_value, new_value, detail from device_event where"
                                + " device_id = any (?) and at >= ? and at < ? order by at desc, id desc limit ?")) {
            statement.setArray(1, connection.createArrayOf("bigint", deviceIds.toArray()));
            statement.setObject(2, from.atOffset(ZoneOffset.UTC));
            statement.setObject(3, to.atOffset(ZoneOffset.UTC));
            statement.setInt(4, most);
            List<DeviceEvent> found = new ArrayList<>();
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    found.add(Timeline.event(row));
                }
            }
            return found;
        } catch (SQLException e) {
            throw new IllegalStateException("Events could not be read: " + e.getMessage(), e);
        }
    }

    /**
     * Events of a device, newest first.
     *
     * @param before id of the event that the piece before ended with; 0 for the first piece
     * @param most at most so many
     */
    public List<Numbered> before(long deviceId, Optional<EventKind> kind, long before, int most) {
        try (Connection connection = database.getConnection();
                PreparedStatement statement = connection.prepareStatement(
                        "select id, device_id, at, kind, title, old_value, new_value, detail from device_event"
                                + " where device_id = ? and (?::text is null or kind = ?) and (? = 0 or (at, id) <"
                                + " (select at, id from device_event where id = ? and device_id = ?))"
                                + " order by at desc, id desc limit ?")) {
            statement.setLong(1, deviceId);
            statement.setString(2, kind.map(EventKind::name).orElse(null));
            statement.setString(3, kind.map(EventKind::name).orElse(null));
            statement.setLong(4, before);
            statement.setLong(5, before);
            statement.setLong(6, deviceId);
            statement.setInt(7, most);
            List<Numbered> found = new ArrayList<>();
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    found.add(new Numbered(row.getLong("id"), Timeline.event(row)));
                }
            }
            return found;
        } catch (SQLException e) {
            throw new IllegalStateException("Events could not be read: " + e.getMessage(), e);
        }
    }
}
