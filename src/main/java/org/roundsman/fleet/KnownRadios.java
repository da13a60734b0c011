package org.roundsman.fleet;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.roundsman.system.StorableText;
import org.roundsman.timeline.EventKind;

/** The radios of one device: which it has, and what it calls them. */
final class KnownRadios {

    private KnownRadios() {}

    private record Known(String label, String mac, int missing) {}

    static void store(Connection connection, FactStore.Changes changes, List<FactStore.Radio> radios)
            throws SQLException {
        Map<Integer, Known> known = known(connection, changes.deviceId());
        boolean tell = !changes.first() || !known.isEmpty();
        for (FactStore.Radio radio : radios) {
            Known before = known.remove(radio.number());
            Known now = new Known(StorableText.of(radio.label()), StorableText.of(radio.mac()), 0);
            if (!now.equals(before)) {
                write(connection, changes.deviceId(), radio.number(), now);
            }
            if (before != null) {
                compare(changes, radio.number(), before, now);
            } else if (tell) {
                changes.add(EventKind.RADIO_CHANGED, "Radio " + radio.number() + " appeared", "", words(now));
            }
        }
        for (Map.Entry<Integer, Known> absent : known.entrySet()) {
            miss(connection, changes, absent.getKey(), absent.getValue());
        }
    }

    /** What is not said this time is not another value. */
    private static void compare(FactStore.Changes changes, int number, Known before, Known now) {
        String radio = "Radio " + number;
        if (!before.label.equals(now.label)) {
            changes.add(EventKind.RADIO_CHANGED, radio + ": name changed", before.label, now.label);
        }
        if (!before.mac.equals(now.mac)) {
            changes.add(EventKind.RADIO_CHANGED, radio + ": MAC address changed", before.mac, now.mac);
        }
    }

    private static void miss(Connection connection, FactStore.Changes changes, int number, Known absent)
            throws SQLException {
        if (absent.missing < FactStore.Changes.GONE_AFTER - 1) {
            write(connection, changes.deviceId(), number, new Known(absent.label, absent.mac, absent.missing + 1));
            return;
        }
        changes.add(EventKind.RADIO_CHANGED, "Radio " + number + " disappeared", words(absent), "");
        try (PreparedStatement statement =
                connection.prepareStatement("delete from radio where device_id = ? and number = ?")) {
            statement.setLong(1, changes.deviceId());
            statement.setInt(2, number);
            statement.executeUpdate();
        }
    }

    private static String words(Known radio) {
        return (radio.label + " " + radio.mac).strip();
    }

    private static Map<Integer, Known> known(Connection connection, long deviceId) throws SQLException {
        Map<Integer, Known> known = new HashMap<>();
        try (PreparedStatement statement =
                connection.prepareStatement("select number, label, mac, missing from radio where device_id = ?")) {
            statement.setLong(1, deviceId);
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    known.put(row.getInt(1), new Known(row.getString(2), row.getString(3), row.getInt(4)));
                }
            }
        }
        return known;
    }

    private static void write(Connection connection, long deviceId, int number, Known radio) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(
                "insert into radio (device_id, number, label, mac, missing) values (?, ?, ?, ?, ?)"
                        + " on conflict (device_id, number) do update set label = excluded.label, mac = excluded.mac,"
                        + " missing = excluded.missing")) {
            statement.setLong(1, deviceId);
            statement.setInt(2, number);
            statement.setString(3, radio.label);
            statement.setString(4, radio.mac);
            statement.setInt(5, radio.missing);
            statement.executeUpdate();
        }
    }
}
