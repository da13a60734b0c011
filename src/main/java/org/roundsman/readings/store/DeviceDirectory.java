package org.roundsman.readings.store;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.util.Collection;
import java.util.HashMap;
import java.util.Map;

/**
 * Which devices exist, and at which site. Read again when an unknown device turns up, but not more often than every two
 * seconds, and at least every minute. Used by one thread.
 */
final class DeviceDirectory {

    private static final long AT_LEAST = 60_000;
    private static final long AT_MOST = 2_000;

    private final Clock clock;
    private Map<Long, Long> sites = Map.of();
    private long readAt = Long.MIN_VALUE / 2;

    DeviceDirectory(Clock clock) {
        this.clock = clock;
    }

    /** The site of each device, up to date as far as these devices are concerned. */
    Map<Long, Long> sites(Connection connection, Collection<Long> devices) throws SQLException {
        long age = clock.millis() - readAt;
        if (age > AT_LEAST || age > AT_MOST && !sites.keySet().containsAll(devices)) {
            read(connection);
        }
        return sites;
    }

    void forget() {
        readAt = Long.MIN_VALUE / 2;
    }

    private void read(Connection connection) throws SQLException {
        Map<Long, Long> found = new HashMap<>();
        try (var statement = connection.prepareStatement("select id, site_id from device");
                ResultSet row = statement.executeQuery()) {
            while (row.next()) {
                found.put(row.getLong(1), row.getLong(2));
            }
        }
        sites = found;
        readAt = clock.millis();
    }
}
