package org.roundsman.fleet;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Keeps what devices say about themselves, in the transaction of whoever stores their readings. A value keeps the time
 * at which it was first read. Octet 0, which PostgreSQL text cannot hold, is written as {@code \x00}. Used by one thread.
 */
public final class FactStore {

    private final Map<NetworkKey, Integer> networks = new HashMap<>();

    /**
     * What a device said in one slow read.
     *
     * @param facts by name, such as SERIAL
     * @param radios its radios
     * @param networks the SSIDs that it carries
     */
    public record Said(Map<String, String> facts, List<Radio> radios, List<String> networks) {}

    /** One radio, by its number on the device; label and mac may be empty. */
    public record Radio(int number, String label, String mac) {}

    private record NetworkKey(long siteId, String ssid) {}

    /** Stores facts that were read at a time; facts that were read later stay. */
    public void store(Connection connection, long deviceId, long siteId, Instant at, Said said) throws SQLException {
        OffsetDateTime since = at.atOffset(ZoneOffset.UTC);
        try (PreparedStatement statement = connection.prepareStatement(
                "insert into device_fact (device_id, fact, value, since) values (?, ?, ?, ?)"
                        + " on conflict (device_id, fact) do update set value = excluded.value, since = excluded.since"
                        + " where device_fact.value <> excluded.value and device_fact.since < excluded.since")) {
            for (Map.Entry<String, String> fact : said.facts().entrySet()) {
                statement.setLong(1, deviceId);
                statement.setString(2, fact.getKey());
                statement.setString(3, storable(fact.getValue()));
                statement.setObject(4, since);
                statement.addBatch();
            }
            statement.executeBatch();
        }
        storeRadios(connection, deviceId, said);
        for (String ssid : said.networks()) {
            networkId(connection, siteId, ssid);
        }
    }

    private static void storeRadios(Connection connection, long deviceId, Said said) throws SQLException {
        try (PreparedStatement statement =
                connection.prepareStatement("insert into radio (device_id, number, label, mac) values (?, ?, ?, ?)"
                        + " on conflict (device_id, number) do update set label = excluded.label, mac = excluded.mac"
                        + " where (radio.label, radio.mac) is distinct from (excluded.label, excluded.mac)")) {
            for (Radio radio : said.radios()) {
                statement.setLong(1, deviceId);
                statement.setInt(2, radio.number());
                statement.setString(3, storable(radio.label()));
                statement.setString(4, storable(radio.mac()));
                statement.addBatch();
            }
            statement.executeBatch();
        }
    }

    /**
     * The id of a site's network, which is made when it is new. Ids are remembered: after a failed transaction call
     * {@link #forget}.
     */
    public int networkId(Connection connection, long siteId, String ssid) throws SQLException {
        NetworkKey key = new NetworkKey(siteId, storable(ssid));
        Integer known = networks.get(key);
        if (known == null) {
            known = find(connection, key);
            if (known == null) {
                make(connection, key);
                known = find(connection, key);
            }
            networks.put(key, known);
        }
        return known;
    }

    /** Forgets the ids of networks, since a transaction that made some has failed. */
    public void forget() {
        networks.clear();
    }

    private static Integer find(Connection connection, NetworkKey key) throws SQLException {
        try (PreparedStatement statement =
                connection.prepareStatement("select id from network where site_id = ? and ssid = ?")) {
            statement.setLong(1, key.siteId);
            statement.setString(2, key.ssid);
            try (ResultSet row = statement.executeQuery()) {
                return row.next() ? row.getInt(1) : null;
            }
        }
    }

    private static void make(Connection connection, NetworkKey key) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(
                "insert into network (site_id, ssid) values (?, ?) on conflict do nothing")) {
            statement.setLong(1, key.siteId);
            statement.setString(2, key.ssid);
            statement.executeUpdate();
        }
    }

    private static String storable(String text) {
        return text.replace("\0", "\\x00");
    }
}
