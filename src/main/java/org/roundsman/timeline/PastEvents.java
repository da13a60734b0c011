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
import javax.sql.DataSource;

/**
 * Events of all devices together, for those who watch the whole fleet. For the service itself: callers show nothing of it
 * to somebody without checking the customer scope.
 */
@ApplicationScoped
public class PastEvents {

    private static final String SELECT =
            "select id, device_id, at, kind, title, old_value, new_value, detail from device_event where kind = any(?)";

    private final DataSource database;

    @Inject
    public PastEvents(DataSource database) {
        this.database = database;
    }

    /** The number of the last event there is; 0 when there is none. */
    public long last() {
        return ask("select coalesce(max(id), 0) from device_event", statement -> {}, row -> row.getLong(1))
                .get(0);
    }

    /** Events of these sorts with a greater number, in the order in which they were noted, at most so many. */
    public List<EventSearch.Numbered> after(long id, Collection<EventKind> kinds, int most) {
        return ask(
                SELECT + " and id > ? order by id limit ?",
                statement -> {
                    kinds(statement, kinds);
                    statement.setLong(2, id);
                    statement.setInt(3, most);
                },
                PastEvents::numbered);
    }

    /** Events of these sorts that happened from a time on and before another: device by device, each in time order. */
    public List<EventSearch.Numbered> between(
            Instant from, Instant to, Collection<EventKind> kinds, Collection<Long> devices) {
        return ask(
                SELECT + " and at >= ? and at < ? and device_id = any(?) order by device_id, at, id",
                statement -> {
                    kinds(statement, kinds);
                    statement.setObject(2, from.atOffset(ZoneOffset.UTC));
                    statement.setObject(3, to.atOffset(ZoneOffset.UTC));
                    statement.setArray(4, statement.getConnection().createArrayOf("bigint", devices.toArray()));
                },
                PastEvents::numbered);
    }

    private static void kinds(PreparedStatement statement, Collection<EventKind> kinds) throws SQLException {
        Object[] names = kinds.stream().map(EventKind::name).toArray();
        statement.setArray(1, statement.getConnection().createArrayOf("text", names));
    }

    private static EventSearch.Numbered numbered(ResultSet row) throws SQLException {
        return new EventSearch.Numbered(row.getLong("id"), Timeline.event(row));
    }

    private interface Filling {
        void into(PreparedStatement statement) throws SQLException;
    }

    private interface Reader<T> {
        T read(ResultSet row) throws SQLException;
    }

    private <T> List<T> ask(String sql, Filling filling, Reader<T> reader) {
        try (Connection connection = database.getConnection();
                PreparedStatement statement = connection.prepareStatement(sql)) {
            filling.into(statement);
            try (ResultSet row = statement.executeQuery()) {
                List<T> found = new ArrayList<>();
                while (row.next()) {
                    found.add(reader.read(row));
                }
                return found;
            }
        } catch (SQLException e) {
            throw new IllegalStateException("Events could not be read: " + e.getMessage(), e);
        }
    }
}
