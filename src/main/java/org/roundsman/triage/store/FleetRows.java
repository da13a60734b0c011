package org.roundsman.triage.store;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.Collection;
import java.util.HashMap;
import java.util.Map;
import javax.sql.DataSource;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.triage.store.Fleet.Device;
import org.roundsman.triage.store.Fleet.Site;

/** Reads the devices and sites that are watched, as far as finding causes asks. */
public final class FleetRows {

    private final DataSource database;

    public FleetRows(DataSource database) {
        this.database = database;
    }

    /** The whole fleet. */
    public Fleet read() {
        Map<Long, Site> sites = new HashMap<>();
        Map<Long, Device> devices = new HashMap<>();
        each(
                "select id, customer_id, name, time_zone from site",
                row -> sites.put(
                        row.getLong(1),
                        new Site(row.getLong(1), row.getLong(2), row.getString(3), ZoneId.of(row.getString(4)))));
        each(
                "select id, site_id, kind, name, paused, interval_s, coalesce(model_id, 0) from device",
                row -> devices.put(
                        row.getLong(1),
                        new Device(
                                row.getLong(1),
                                row.getLong(2),
                                DeviceKind.valueOf(row.getString(3)),
                                row.getString(4),
                                row.getBoolean(5),
                                Duration.ofSeconds(row.getInt(6)),
                                row.getLong(7))));
        return new Fleet(sites, devices);
    }

    /** When wiring of anything at these sites was last read or worked out; a site without any has no entry. */
    public Map<Long, Instant> wiringReadAt(Collection<Long> siteIds) {
        Map<Long, Instant> times = new HashMap<>();
        if (siteIds.isEmpty()) {
            return times;
        }
        try (Connection connection = database.getConnection();
                var statement = connection.prepareStatement(
                        "select d.site_id, max(greatest(r.read_at, r.state_at)) from wiring_read r join device d on"
                                + " d.id = r.device_id where d.site_id = any (?) group by d.site_id")) {
            statement.setArray(1, connection.createArrayOf("bigint", siteIds.toArray()));
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    OffsetDateTime at = row.getObject(2, OffsetDateTime.class);
                    if (at != null) {
                        times.put(row.getLong(1), at.toInstant());
                    }
                }
            }
            return times;
        } catch (SQLException e) {
            throw failed(e);
        }
    }

    private interface RowUse {
        void use(ResultSet row) throws SQLException;
    }

    private void each(String sql, RowUse use) {
        try (Connection connection = database.getConnection();
                var statement = connection.prepareStatement(sql);
                ResultSet row = statement.executeQuery()) {
            while (row.next()) {
                use.use(row);
            }
        } catch (SQLException e) {
            throw failed(e);
        }
    }

    private static IllegalStateException failed(SQLException e) {
        return new IllegalStateException("The fleet cannot be read: " + e.getMessage(), e);
    }
}
