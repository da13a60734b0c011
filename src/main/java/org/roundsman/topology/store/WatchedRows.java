package org.roundsman.topology.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.roundsman.fleet.DeviceKind;

/** Which devices are to be read. */
public final class WatchedRows {

    /** Makes something of one of them. */
    public interface Maker<T> {
        T made(long deviceId, long siteId, DeviceKind kind, Optional<Instant> readAt, boolean offersLldp);
    }

    private WatchedRows() {}

    /** Every device that is not paused. */
    public static <T> List<T> all(Connection connection, Maker<T> maker) throws SQLException {
        return Jdbc.rows(
                connection,
                "select d.id, d.site_id, d.kind, r.read_at, coalesce(r.lldp, true) as lldp from device d"
                        + " left join wiring_read r on r.device_id = d.id where not d.paused order by d.id",
                row -> maker.made(
                        row.getLong("id"),
                        row.getLong("site_id"),
                        DeviceKind.valueOf(row.getString("kind")),
                        Jdbc.moment(row, "read_at"),
                        row.getBoolean("lldp")));
    }
}
