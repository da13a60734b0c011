package org.roundsman.triage.store;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.sql.DataSource;
import org.roundsman.fleet.ServiceHours;
import org.roundsman.triage.ServiceTime;

/** What impact needs to know of a site. */
public final class SiteFacts {

    private final DataSource database;

    public SiteFacts(DataSource database) {
        this.database = database;
    }

    /**
     * A site.
     *
     * @param target availability in percent of its service hours
     * @param accessPoints not paused
     */
    public record Facts(long siteId, ServiceTime time, double target, List<Long> accessPoints) {}

    /** Empty when there is no such site. */
    public Optional<Facts> of(long siteId) {
        try (Connection connection = database.getConnection()) {
            List<ServiceHours> hours = rows(
                    connection,
                    "select weekday, opens, closes from site_hours where site_id = ? order by weekday, opens",
                    siteId,
                    row -> new ServiceHours(
                            row.getInt(1), row.getObject(2, LocalTime.class), row.getObject(3, LocalTime.class)));
            List<Long> points = rows(
                    connection,
                    "select id from device where site_id = ? and kind = 'ACCESS_POINT' and not paused order by id",
                    siteId,
                    row -> row.getLong(1));
            return rows(
                            connection,
                            "select time_zone, availability_target from site where id = ?",
                            siteId,
                            row -> new Facts(
                                    siteId,
                                    new ServiceTime(ZoneId.of(row.getString(1)), hours),
                                    row.getDouble(2),
                                    points))
                    .stream()
                    .findFirst();
        } catch (SQLException e) {
            throw new IllegalStateException("The facts of a site cannot be read: " + e.getMessage(), e);
        }
    }

    private interface RowReader<T> {
        T read(ResultSet row) throws SQLException;
    }

    private static <T> List<T> rows(Connection connection, String sql, long id, RowReader<T> reader)
            throws SQLException {
        try (var statement = connection.prepareStatement(sql)) {
            statement.setLong(1, id);
            List<T> found = new ArrayList<>();
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    found.add(reader.read(row));
                }
            }
            return found;
        }
    }
}
