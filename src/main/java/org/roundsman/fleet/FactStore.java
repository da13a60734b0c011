package org.roundsman.fleet;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.roundsman.system.StorableText;
import org.roundsman.timeline.DeviceEvent;
import org.roundsman.timeline.DeviceEvents;
import org.roundsman.timeline.EventKind;

/**
 * Keeps what devices say about themselves, in the transaction of whoever stores their readings, and notes each change on
 * the device's timeline. A value keeps the time at which it was first read. What was read before the device's last read
 * changes nothing; what two complete reads in a row did not bring is gone. The first read of a device is one event.
 * Octet 0, which PostgreSQL text cannot hold, is written as {@code \x00}. Used by one thread.
 */
public final class FactStore {

    private final Map<NetworkKey, Integer> networks = new HashMap<>();

    /**
     * What a device said in one slow read that was answered in full.
     *
     * @param facts by name, such as SERIAL
     * @param radios its radios
     * @param networks the SSIDs that it carries
     */
    public record Said(Map<String, String> facts, List<Radio> radios, List<String> networks) {}

    /** One radio, by its number on the device; label and mac may be empty. */
    public record Radio(int number, String label, String mac) {}

    private record NetworkKey(long siteId, String ssid) {}

    /** Stores facts that were read at a time, unless others were read later. */
    public void store(Connection connection, long deviceId, long siteId, Instant at, Said said) throws SQLException {
        Boolean first = begin(connection, deviceId, at);
        if (first == null) {
            return;
        }
        Changes changes = new Changes(deviceId, at, first);
        boolean nothingKnown = storeFacts(connection, changes, said);
        KnownRadios.store(connection, changes, said.radios());
        storeNetworks(connection, changes, siteId, said);
        List<DeviceEvent> events = first && nothingKnown ? List.of(changes.firstRead(said)) : changes.events();
        DeviceEvents.add(connection, events);
    }

    /** Whether this is the device's first read; null when a later one is stored already. */
    private static Boolean begin(Connection connection, long deviceId, Instant at) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(
                "insert into device_survey as s (device_id, first_at, last_at) values (?, ?, ?)"
                        + " on conflict (device_id) do update set last_at = excluded.last_at"
                        + " where s.last_at < excluded.last_at returning first_at = last_at")) {
            statement.setLong(1, deviceId);
            statement.setObject(2, at.atOffset(ZoneOffset.UTC));
            statement.setObject(3, at.atOffset(ZoneOffset.UTC));
            try (ResultSet row = statement.executeQuery()) {
                return row.next() ? row.getBoolean(1) : null;
            }
        }
    }

    /** Returns whether nothing was known of the device before. */
    private static boolean storeFacts(Connection connection, Changes changes, Said said) throws SQLException {
        Map<String, Known> known = knownFacts(connection, changes.deviceId());
        Map<String, String> fresh = new TreeMap<>();
        for (Map.Entry<String, String> fact : said.facts().entrySet()) {
            Known before = known.remove(fact.getKey());
            String value = StorableText.of(fact.getValue());
            if (before == null || !before.value.equals(value)) {
                changes.fact(fact.getKey(), before == null ? "" : before.value, value);
                fresh.put(fact.getKey(), value);
            } else if (before.missing > 0) {
                missing(connection, changes.deviceId(), fact.getKey(), 0);
            }
        }
        write(connection, changes, fresh);
        for (Map.Entry<String, Known> absent : known.entrySet()) {
            if (absent.getValue().missing >= Changes.GONE_AFTER - 1) {
                changes.fact(absent.getKey(), absent.getValue().value, "");
                remove(connection, changes.deviceId(), absent.getKey());
            } else {
                missing(connection, changes.deviceId(), absent.getKey(), absent.getValue().missing + 1);
            }
        }
        return known.isEmpty() && fresh.size() == said.facts().size() && changes.allNew();
    }

    private record Known(String value, int missing) {}

    private static Map<String, Known> knownFacts(Connection connection, long deviceId) throws SQLException {
        Map<String, Known> known = new TreeMap<>();
        try (PreparedStatement statement =
                connection.prepareStatement("select fact, value, missing from device_fact where device_id = ?")) {
            statement.setLong(1, deviceId);
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    known.put(row.getString(1), new Known(row.getString(2), row.getInt(3)));
                }
            }
        }
        return known;
    }

    private static void write(Connection connection, Changes changes, Map<String, String> fresh) throws SQLException {
        if (fresh.isEmpty()) {
            return;
        }
        OffsetDateTime since = changes.at().atOffset(ZoneOffset.UTC);
        try (PreparedStatement statement = connection.prepareStatement(
                "insert into device_fact (device_id, fact, value, since) values (?, ?, ?, ?) on conflict (device_id,"
                        + " fact) do update set value = excluded.value, since = excluded.since, missing = 0")) {
            for (Map.Entry<String, String> fact : fresh.entrySet()) {
                statement.setLong(1, changes.deviceId());
                statement.setString(2, fact.getKey());
                statement.setString(3, fact.getValue());
                statement.setObject(4, since);
                statement.addBatch();
            }
            statement.executeBatch();
        }
    }

    private static void missing(Connection connection, long deviceId, String fact, int times) throws SQLException {
        try (PreparedStatement statement =
                connection.prepareStatement("update device_fact set missing = ? where device_id = ? and fact = ?")) {
            statement.setInt(1, times);
            statement.setLong(2, deviceId);
            statement.setString(3, fact);
            statement.executeUpdate();
        }
    }

    private static void remove(Connection connection, long deviceId, String fact) throws SQLException {
        try (PreparedStatement statement =
                connection.prepareStatement("delete from device_fact where device_id = ? and fact = ?")) {
            statement.setLong(1, deviceId);
            statement.setString(2, fact);
            statement.executeUpdate();
        }
    }

    private void storeNetworks(Connection connection, Changes changes, long siteId, Said said) throws SQLException {
        Map<Integer, String> carried = new HashMap<>();
        for (String ssid : said.networks()) {
            carried.put(networkId(connection, siteId, ssid), StorableText.of(ssid));
        }
        CarriedNetworks.store(connection, changes, carried);
    }

    /**
     * The id of a site's network, which is made when it is new. Ids are remembered: after a failed transaction call
     * {@link #forget}.
     */
    public int networkId(Connection connection, long siteId, String ssid) throws SQLException {
        NetworkKey key = new NetworkKey(siteId, StorableText.of(ssid));
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

    /** What differs between two reads of one device, as events. */
    static final class Changes {

        /** So many complete reads in a row without a thing mean that it is gone. */
        static final int GONE_AFTER = 2;

        private final long deviceId;
        private final Instant at;
        private final boolean first;
        private final List<DeviceEvent> events = new ArrayList<>();
        private boolean allNew = true;

        Changes(long deviceId, Instant at, boolean first) {
            this.deviceId = deviceId;
            this.at = at;
            this.first = first;
        }

        long deviceId() {
            return deviceId;
        }

        Instant at() {
            return at;
        }

        /** A first read says what there is, not what is new. */
        boolean first() {
            return first;
        }

        boolean allNew() {
            return allNew;
        }

        void fact(String fact, String old, String fresh) {
            allNew &= old.isEmpty();
            if (first && old.isEmpty()) {
                return;
            }
            String words = FactWords.of(fact);
            String title = words + (fresh.isEmpty() ? " is no longer told" : old.isEmpty() ? " is told" : " changed");
            add(EventKind.FACT_CHANGED, title, old, fresh);
        }

        void add(EventKind kind, String title, String old, String fresh) {
            events.add(DeviceEvent.change(deviceId, at, kind, title, old, fresh));
        }

        List<DeviceEvent> events() {
            return events;
        }

        DeviceEvent firstRead(Said said) {
            List<String> parts = new ArrayList<>();
            for (String fact : List.of("MODEL", "SERIAL", "FIRMWARE")) {
                String value = said.facts().getOrDefault(fact, "");
                if (!value.isEmpty()) {
                    parts.add(FactWords.of(fact).toLowerCase(java.util.Locale.ROOT) + " " + value);
                }
            }
            return DeviceEvent.change(deviceId, at, EventKind.FACT_CHANGED, "First read", "", String.join(", ", parts));
        }
    }
}
