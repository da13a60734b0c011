package org.roundsman.readings.store;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.roundsman.readings.sql.Sql;

/**
 * Which devices exist, and at which site. All of it is read again every minute, since devices move and go; one that is not
 * known is looked up at once. Used by one thread.
 */
final class DeviceDirectory {

    private static final long READ_EVERY = 60_000;

    private final Clock clock;
    private Map<Long, Long> sites = new HashMap<>();
    private long readAt = Long.MIN_VALUE / 2;

    DeviceDirectory(Clock clock) {
        this.clock = clock;
    }

    /** The site of each device that exists; complete as far as these devices are concerned. */
    Map<Long, Long> sites(Connection connection, Collection<Long> devices) throws SQLException {
        if (Math.abs(clock.millis() - readAt) > READ_EVERY) {
            sites = read(connection, "select id, site_id from device where id <> all (?)", List.of());
            readAt = clock.millis();
        }
        List<Long> unknown =
                devices.stream().filter(id -> !sites.containsKey(id)).toList();
        if (!unknown.isEmpty()) {
            sites.putAll(read(connection, "select id, site_id from device where id = any (?)", unknown));
        }
        return sites;
    }

    void forget() {
        readAt = Long.MIN_VALUE / 2;
    }

    private static Map<Long, Long> read(Connection connection, String sql, List<Long> ids) throws SQLException {
        Map<Long, Long> found = new HashMap<>();
        try (var statement = connection.prepareStatement(sql)) {
            Sql.fill(statement, Sql.ids(connection, ids));
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    found.put(row.getLong(1), row.getLong(2));
                }
            }
        }
        return found;
    }
}
