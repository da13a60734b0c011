package org.roundsman.topology.store;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.roundsman.topology.Port;
import org.roundsman.topology.PortState;
import org.roundsman.topology.Power;
import org.roundsman.topology.PowerMatch;
import org.roundsman.topology.PowerState;
import org.roundsman.topology.read.States;

/** Ports of devices. */
final class PortRows {

    private static final String INSERT =
            "insert into wiring_port (device_id, number, name, description, alias, mac, kind,"
                    + " bridge_port, speed_mbit, state, macs, power_group, power_port, power_state, power_class, power_enabled,"
                    + " power_match, present) values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, true)"
                    + " on conflict (device_id, number) do update set name = excluded.name, description = excluded.description,"
                    + " alias = excluded.alias, mac = excluded.mac, kind = excluded.kind, bridge_port = excluded.bridge_port,"
                    + " speed_mbit = excluded.speed_mbit, state = excluded.state, macs = excluded.macs, present = true";
    private static final String WITH_POWER = ", power_group = excluded.power_group, power_port = excluded.power_port,"
            + " power_state = excluded.power_state, power_class = excluded.power_class,"
            + " power_enabled = excluded.power_enabled, power_match = excluded.power_match";

    private PortRows() {}

    /**
     * Takes over what was read.
     *
     * @param whole these are all ports: others are gone, and kept only while something hangs on them
     * @param powerRead power was read too; else what was known of it stays
     */
    static void store(Connection connection, long deviceId, List<Port> ports, boolean whole, boolean powerRead)
            throws SQLException {
        if (whole) {
            Jdbc.run(connection, "update wiring_port set present = false where device_id = ? and present", deviceId);
        }
        Jdbc.batch(
                connection,
                INSERT + (powerRead ? WITH_POWER : ""),
                ports.stream().map(port -> row(deviceId, port)).toList());
        Jdbc.run(
                connection,
                "delete from wiring_port p where device_id = ? and not present"
                        + " and not exists (select from wiring_attachment a where a.parent_id = p.device_id and a.port = p.number)"
                        + " and not exists (select from wiring_word w where w.parent_id = p.device_id and w.port = p.number)",
                deviceId);
    }

    private static Object[] row(long deviceId, Port port) {
        Optional<Power> power = port.power();
        return new Object[] {
            deviceId,
            port.number(),
            port.name(),
            port.description(),
            port.alias(),
            port.mac(),
            port.kind(),
            port.bridgePort(),
            port.speedMbit(),
            port.state().code(),
            port.macs(),
            number(power.map(Power::group)),
            number(power.map(Power::port)),
            number(power.map(p -> p.state().code())),
            power.map(Power::powerClass).orElse(OptionalInt.empty()),
            power.map(Power::enabled).orElse(null),
            power.map(p -> p.match().name()).orElse(null)
        };
    }

    private static OptionalInt number(Optional<Integer> value) {
        return value.map(OptionalInt::of).orElse(OptionalInt.empty());
    }

    /** Takes over states alone; ports that are not known yet wait for the next full reading. */
    static void states(Connection connection, long deviceId, States states) throws SQLException {
        List<Object[]> links = new ArrayList<>();
        states.links()
                .forEach((number, link) ->
                        links.add(new Object[] {link.state().code(), link.speedMbit(), deviceId, number}));
        Jdbc.batch(
                connection,
                "update wiring_port set state = ?, speed_mbit = ? where device_id = ? and number = ? and present",
                links);
        List<Object[]> power = states.power().stream()
                .map(p -> new Object[] {p.state().code(), p.powerClass(), p.enabled(), deviceId, p.group(), p.port()})
                .toList();
        Jdbc.batch(
                connection,
                "update wiring_port set power_state = ?, power_class = ?, power_enabled = ?"
                        + " where device_id = ? and power_group = ? and power_port = ?",
                power);
    }

    /** Ports of a site's devices, by number. */
    static Map<Long, List<Port>> ofSite(Connection connection, long siteId) throws SQLException {
        Map<Long, List<Port>> ports = new HashMap<>();
        Jdbc.rows(
                        connection,
                        "select p.* from wiring_port p join device d on d.id = p.device_id where d.site_id = ?"
                                + " order by p.device_id, p.bridge_port, p.number",
                        row -> Map.entry(row.getLong("device_id"), port(row)),
                        siteId)
                .forEach(entry -> ports.computeIfAbsent(entry.getKey(), made -> new ArrayList<>())
                        .add(entry.getValue()));
        return ports;
    }

    private static Port port(ResultSet row) throws SQLException {
        return new Port(
                row.getInt("number"),
                row.getString("name"),
                row.getString("description"),
                row.getString("alias"),
                row.getString("mac"),
                row.getInt("kind"),
                Jdbc.number(row, "bridge_port"),
                Jdbc.wide(row, "speed_mbit"),
                PortState.of(row.getInt("state")),
                row.getInt("macs"),
                power(row),
                row.getBoolean("present"));
    }

    private static Optional<Power> power(ResultSet row) throws SQLException {
        OptionalInt state = Jdbc.number(row, "power_state");
        if (state.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new Power(
                row.getInt("power_group"),
                row.getInt("power_port"),
                PowerState.of(state.getAsInt()),
                Jdbc.number(row, "power_class"),
                row.getBoolean("power_enabled"),
                PowerMatch.valueOf(row.getString("power_match"))));
    }
}
