package org.roundsman.fleet;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.ZoneOffset;
import java.util.Map;
import java.util.TreeMap;
import org.roundsman.timeline.EventKind;

/** Which SSIDs one device carries. */
final class CarriedNetworks {

    private CarriedNetworks() {}

    private record Known(int network, int missing) {}

    /** @param carried SSIDs by the network's id */
    static void store(Connection connection, FactStore.Changes changes, Map<Integer, String> carried)
            throws SQLException {
        Map<String, Known> known = known(connection, changes.deviceId());
        for (Map.Entry<Integer, String> network : carried.entrySet()) {
            Known before = known.remove(network.getValue());
            if (before == null) {
                add(connection, changes, network.getKey());
                if (!changes.first()) {
                    changes.add(EventKind.NETWORK_CHANGED, "Network appeared", "", network.getValue());
                }
            } else {
                keep(connection, changes, network.getKey(), before);
            }
        }
        for (Map.Entry<String, Known> absent : known.entrySet()) {
            int network = absent.getValue().network;
            if (absent.getValue().missing < FactStore.Changes.GONE_AFTER - 1) {
                missing(connection, changes.deviceId(), network, absent.getValue().missing + 1);
            } else {
                changes.add(EventKind.NETWORK_CHANGED, "Network disappeared", absent.getKey(), "");
                remove(connection, changes.deviceId(), network);
            }
        }
    }

    /** A device that moved carries the same name as another site's network: that is no change of what it does. */
    private static void keep(Connection connection, FactStore.Changes changes, int network, Known before)
            throws SQLException {
        if (before.network != network) {
            remove(connection, changes.deviceId(), before.network);
            add(connection, changes, network);
        } else if (before.missing > 0) {
            missing(connection, changes.deviceId(), network, 0);
        }
    }

    private static Map<String, Known> known(Connection connection, long deviceId) throws SQLException {
        Map<String, Known> known = new TreeMap<>();
        try (PreparedStatement statement = connection.prepareStatement("select c.network_id, n.ssid, c.missing"
                + " from device_network c join network n on n.id = c.network_id where c.device_id = ?")) {
            statement.setLong(1, deviceId);
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    known.put(row.getString(2), new Known(row.getInt(1), row.getInt(3)));
                }
            }
        }
        return known;
    }

    private static void add(Connection connection, FactStore.Changes changes, int network) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(
                "insert into device_network (device_id, network_id, since) values (?, ?, ?)")) {
            statement.setLong(1, changes.deviceId());
            statement.setInt(2, network);
            statement.setObject(3, changes.at().atOffset(ZoneOffset.UTC));
            statement.executeUpdate();
        }
    }

    private static void missing(Connection connection, long deviceId, int network, int times) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(
                "update device_network set missing = ? where device_id = ? and network_id = ?")) {
            statement.setInt(1, times);
            statement.setLong(2, deviceId);
            statement.setInt(3, network);
            statement.executeUpdate();
        }
    }

    private static void remove(Connection connection, long deviceId, int network) throws SQLException {
        try (PreparedStatement statement =
                connection.prepareStatement("delete from device_network where device_id = ? and network_id = ?")) {
            statement.setLong(1, deviceId);
            statement.setInt(2, network);
            statement.executeUpdate();
        }
    }
}
