package org.roundsman.topology.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.roundsman.measure.Outcome;
import org.roundsman.topology.ChassisId;
import org.roundsman.topology.LldpId;
import org.roundsman.topology.NeighbourSeen.Announced;
import org.roundsman.topology.Supply;
import org.roundsman.topology.read.Snapshot;
import org.roundsman.topology.read.States;

/** Stores what readings bring, in the caller's transaction. */
public final class ReadingRows {

    /** Beyond that the rest of what one device hears is left out: no wired port has so many neighbours. */
    private static final int MOST_NEIGHBOURS = 1_000;

    private static final int LONGEST_TEXT = 500;

    private final Connection connection;
    private final long deviceId;

    public ReadingRows(Connection connection, long deviceId) {
        this.connection = connection;
        this.deviceId = deviceId;
    }

    /** A reading ended without an answer: what was known stays. */
    public void failed(Instant at, Outcome outcome) throws SQLException {
        Jdbc.run(
                connection,
                "insert into wiring_read (device_id, tried_at, outcome) select id, ?, ? from device where id = ?"
                        + " on conflict (device_id) do update set tried_at = excluded.tried_at, outcome = excluded.outcome",
                at,
                outcome.code(),
                deviceId);
    }

    /** Whether the device is still there, and stays until this transaction ends. */
    public boolean present() throws SQLException {
        return !Jdbc.rows(
                        connection, "select id from device where id = ? for key share", row -> row.getLong(1), deviceId)
                .isEmpty();
    }

    /**
     * Stores a full reading.
     *
     * @param siteMacs addresses of the site's devices: where those of others were learnt is not kept
     * @param oldAfter and
     * @param forget evidence that was missing in so many readings and for so long is deleted, unless a place rests on it
     * @return whether the device has addresses that it did not have before
     */
    public boolean full(Snapshot snapshot, int requests, Set<String> siteMacs, int oldAfter, Duration forget)
            throws SQLException {
        said(snapshot, requests);
        PortRows.store(
                connection,
                deviceId,
                snapshot.ports(),
                snapshot.whole().ports(),
                snapshot.whole().power());
        supplies(snapshot.supplies());
        boolean fresh = addresses(snapshot.addresses(), snapshot.whole().ports());
        neighbours(snapshot);
        learnt(snapshot, siteMacs);
        forget(snapshot.at().minus(forget), oldAfter);
        return fresh;
    }

    /** Stores a short reading. */
    public void states(States states) throws SQLException {
        PortRows.states(connection, deviceId, states);
        supplies(states.supplies());
        Jdbc.run(
                connection,
                "update wiring_read set state_at = ?, tried_at = ?, outcome = ? where device_id = ?",
                states.at(),
                states.at(),
                Outcome.ANSWERED.code(),
                deviceId);
    }

    private void said(Snapshot snapshot, int requests) throws SQLException {
        Optional<ChassisId> chassis = snapshot.chassis();
        Snapshot.Offered offered = snapshot.whole().offered();
        Jdbc.run(
                connection,
                "insert into wiring_read (device_id, tried_at, outcome, read_at, state_at, complete, chassis_kind,"
                        + " chassis_id, system_name, bridge, lldp, power, requests, remarks)"
                        + " values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?) on conflict (device_id) do update set"
                        + " tried_at = excluded.tried_at, outcome = excluded.outcome, read_at = excluded.read_at,"
                        + " state_at = excluded.state_at, complete = excluded.complete,"
                        + " chassis_kind = excluded.chassis_kind, chassis_id = excluded.chassis_id,"
                        + " system_name = excluded.system_name, bridge = excluded.bridge, lldp = excluded.lldp,"
                        + " power = excluded.power, requests = excluded.requests, remarks = excluded.remarks",
                deviceId,
                snapshot.at(),
                Outcome.ANSWERED.code(),
                snapshot.at(),
                snapshot.at(),
                snapshot.whole().all(),
                chassis.map(id -> OptionalInt.of(id.kind())).orElse(OptionalInt.empty()),
                chassis.map(ChassisId::octets).orElse(null),
                cut(snapshot.systemName()),
                offered.bridge(),
                offered.lldp(),
                offered.power(),
                requests,
                snapshot.remarks());
    }

    private static String cut(String text) {
        return text.length() > LONGEST_TEXT ? text.substring(0, LONGEST_TEXT) + "…" : text;
    }

    private void supplies(List<Supply> supplies) throws SQLException {
        if (supplies.isEmpty()) {
            return;
        }
        Jdbc.run(connection, "delete from wiring_supply where device_id = ?", deviceId);
        Jdbc.batch(
                connection,
                "insert into wiring_supply (device_id, pse_group, state, watts, used_watts) values (?, ?, ?, ?, ?)"
                        + " on conflict do nothing",
                supplies.stream()
                        .map(s -> new Object[] {deviceId, s.group(), s.state(), s.watts(), s.usedWatts()})
                        .toList());
    }

    private boolean addresses(Set<String> addresses, boolean whole) throws SQLException {
        Set<String> before = new HashSet<>(Jdbc.rows(
                connection, "select mac from wiring_address where device_id = ?", row -> row.getString(1), deviceId));
        List<Object[]> fresh = addresses.stream()
                .filter(mac -> !before.contains(mac))
                .map(mac -> new Object[] {deviceId, mac})
                .toList();
        Jdbc.batch(
                connection, "insert into wiring_address (device_id, mac) values (?, ?) on conflict do nothing", fresh);
        if (whole) {
            Jdbc.batch(
                    connection,
                    "delete from wiring_address where device_id = ? and mac = ?",
                    before.stream()
                            .filter(mac -> !addresses.contains(mac))
                            .map(mac -> new Object[] {deviceId, mac})
                            .toList());
        }
        return !fresh.isEmpty();
    }

    private void neighbours(Snapshot snapshot) throws SQLException {
        if (snapshot.whole().neighbours()) {
            miss("wiring_neighbour");
        }
        List<Object[]> rows = snapshot.neighbours().stream()
                .limit(MOST_NEIGHBOURS)
                .map(heard -> row(heard, snapshot.at()))
                .toList();
        Jdbc.batch(
                connection,
                "insert into wiring_neighbour (device_id, port, local_port, port_by, chassis_kind, chassis_id, port_kind,"
                        + " port_id, port_text, system_name, system_text, abilities, addresses, first_seen, last_seen)"
                        + " values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)"
                        + " on conflict (device_id, port, chassis_kind, chassis_id, port_kind, port_id) do update set"
                        + " local_port = excluded.local_port, port_by = excluded.port_by,"
                        + " port_text = excluded.port_text, system_name = excluded.system_name,"
                        + " system_text = excluded.system_text, abilities = excluded.abilities,"
                        + " addresses = excluded.addresses, last_seen = excluded.last_seen, missed = 0",
                rows);
    }

    private Object[] row(Snapshot.Heard heard, Instant at) {
        Announced announced = heard.announced();
        return new Object[] {
            deviceId,
            heard.port(),
            heard.localPort(),
            heard.portBy(),
            announced.chassisKind(),
            announced.chassisId(),
            announced.portKind(),
            announced.portId(),
            cut(announced.portText()),
            cut(announced.systemName()),
            cut(announced.systemText()),
            announced.abilities(),
            announced.addresses(),
            at,
            at
        };
    }

    private void learnt(Snapshot snapshot, Set<String> siteMacs) throws SQLException {
        if (snapshot.whole().learnt()) {
            miss("wiring_learnt");
        }
        List<Object[]> rows = new ArrayList<>();
        snapshot.learnt().forEach((mac, ports) -> {
            if (siteMacs.contains(mac) && !snapshot.addresses().contains(mac)) {
                ports.forEach(port -> rows.add(new Object[] {deviceId, mac, port, snapshot.at(), snapshot.at()}));
            }
        });
        Jdbc.batch(
                connection,
                "insert into wiring_learnt (device_id, mac, port, first_seen, last_seen) values (?, ?, ?, ?, ?)"
                        + " on conflict (device_id, mac, port) do update set last_seen = excluded.last_seen, missed = 0",
                rows);
    }

    private void miss(String table) throws SQLException {
        Jdbc.run(
                connection, "update " + table + " set missed = least(missed + 1, 10000) where device_id = ?", deviceId);
    }

    private void forget(Instant before, int oldAfter) throws SQLException {
        for (String table : List.of("wiring_neighbour", "wiring_learnt")) {
            Jdbc.run(
                    connection,
                    "delete from " + table + " e where device_id = ? and missed >= ? and last_seen < ? and not exists"
                            + " (select from wiring_attachment a where a.device_id = e.device_id"
                            + " or a.parent_id = e.device_id and a.port = e.port)",
                    deviceId,
                    oldAfter,
                    before);
        }
    }

    /** Addresses of all devices of a site, as they were read or as the devices say. */
    public static Set<String> siteMacs(Connection connection, long siteId) throws SQLException {
        Set<String> macs = new HashSet<>();
        Jdbc.rows(
                        connection,
                        "select a.mac from wiring_address a join device d on d.id = a.device_id where d.site_id = ?"
                                + " union select f.value from device_fact f join device d on d.id = f.device_id"
                                + " where d.site_id = ? and f.fact = 'BASE_MAC'"
                                + " union select r.mac from radio r join device d on d.id = r.device_id where d.site_id = ?",
                        row -> row.getString(1),
                        siteId,
                        siteId,
                        siteId)
                .forEach(text -> LldpId.macOfText(text).ifPresent(macs::add));
        return macs;
    }
}
