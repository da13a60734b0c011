package org.roundsman.topology.store;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.topology.ChassisId;
import org.roundsman.topology.LldpId;
import org.roundsman.topology.NeighbourSeen;
import org.roundsman.topology.NeighbourSeen.Announced;
import org.roundsman.topology.Port;
import org.roundsman.topology.find.Evidence;
import org.roundsman.topology.find.Member;

/** Reads what is known about the wiring of a site. */
public final class EvidenceRows {

    private EvidenceRows() {}

    /** Everything that finding places needs. */
    public static Evidence of(Connection connection, long siteId, int oldAfter, int edgeMacs) throws SQLException {
        return new Evidence(
                members(connection, siteId),
                neighbours(connection, siteId),
                learnt(connection, siteId),
                words(connection, siteId),
                oldAfter,
                edgeMacs);
    }

    /** Ports of the site's devices. */
    public static Map<Long, List<Port>> ports(Connection connection, long siteId) throws SQLException {
        return PortRows.ofSite(connection, siteId);
    }

    private static List<Member> members(Connection connection, long siteId) throws SQLException {
        Map<Long, List<Port>> ports = ports(connection, siteId);
        Map<Long, Set<String>> macs = macs(connection, siteId);
        return Jdbc.rows(
                connection,
                "select d.id, d.kind, d.name, d.host, coalesce(nullif(r.system_name, ''), f.value, '') as system_name,"
                        + " r.chassis_kind, r.chassis_id from device d"
                        + " left join wiring_read r on r.device_id = d.id"
                        + " left join device_fact f on f.device_id = d.id and f.fact = 'NAME'"
                        + " where d.site_id = ? order by d.id",
                row -> member(row, ports, macs),
                siteId);
    }

    private static Member member(ResultSet row, Map<Long, List<Port>> ports, Map<Long, Set<String>> macs)
            throws SQLException {
        long id = row.getLong("id");
        byte[] chassis = row.getBytes("chassis_id");
        return new Member(
                id,
                DeviceKind.valueOf(row.getString("kind")),
                row.getString("name"),
                row.getString("host"),
                row.getString("system_name"),
                chassis == null ? Optional.empty() : Optional.of(new ChassisId(row.getInt("chassis_kind"), chassis)),
                macs.getOrDefault(id, Set.of()),
                ports.getOrDefault(id, List.of()));
    }

    private static Map<Long, Set<String>> macs(Connection connection, long siteId) throws SQLException {
        Map<Long, Set<String>> macs = new HashMap<>();
        Jdbc.rows(
                        connection,
                        "select a.device_id, a.mac from wiring_address a join device d on d.id = a.device_id"
                                + " where d.site_id = ?"
                                + " union select f.device_id, f.value from device_fact f"
                                + " join device d on d.id = f.device_id where d.site_id = ? and f.fact = 'BASE_MAC'"
                                + " union select r.device_id, r.mac from radio r join device d on d.id = r.device_id"
                                + " where d.site_id = ?",
                        row -> Map.entry(row.getLong(1), row.getString(2)),
                        siteId,
                        siteId,
                        siteId)
                .forEach(entry -> LldpId.macOfText(entry.getValue())
                        .ifPresent(mac -> macs.computeIfAbsent(entry.getKey(), made -> new HashSet<>())
                                .add(mac)));
        return macs;
    }

    /** What the devices of a site hear by LLDP. */
    public static List<NeighbourSeen> neighbours(Connection connection, long siteId) throws SQLException {
        return Jdbc.rows(
                connection,
                "select n.* from wiring_neighbour n join device d on d.id = n.device_id where d.site_id = ?"
                        + " order by n.device_id, n.port, n.id",
                row -> new NeighbourSeen(
                        row.getLong("device_id"),
                        row.getInt("port"),
                        row.getInt("local_port"),
                        row.getString("port_by"),
                        announced(row),
                        Jdbc.sure(row, "first_seen"),
                        Jdbc.sure(row, "last_seen"),
                        row.getInt("missed")),
                siteId);
    }

    private static Announced announced(ResultSet row) throws SQLException {
        return new Announced(
                row.getInt("chassis_kind"),
                row.getBytes("chassis_id"),
                row.getInt("port_kind"),
                row.getBytes("port_id"),
                row.getString("port_text"),
                row.getString("system_name"),
                row.getString("system_text"),
                row.getInt("abilities"),
                Jdbc.texts(row, "addresses"));
    }

    private static List<Evidence.Learnt> learnt(Connection connection, long siteId) throws SQLException {
        return Jdbc.rows(
                connection,
                "select l.* from wiring_learnt l join device d on d.id = l.device_id where d.site_id = ?"
                        + " order by l.device_id, l.port, l.mac",
                row -> new Evidence.Learnt(
                        row.getLong("device_id"),
                        row.getString("mac"),
                        row.getInt("port"),
                        Jdbc.sure(row, "first_seen"),
                        Jdbc.sure(row, "last_seen"),
                        row.getInt("missed")),
                siteId);
    }

    /**
     * What people said. A port that was said by its name is found by it again where the device has renumbered its ports
     * since.
     */
    private static List<Evidence.Word> words(Connection connection, long siteId) throws SQLException {
        return Jdbc.rows(
                connection,
                "select w.*, coalesce((select min(p.number) from wiring_port p where p.device_id = w.parent_id"
                        + " and w.port_name <> '' and w.port_name in (p.name, p.description) and p.present"
                        + " having count(*) = 1), w.port) as port_now"
                        + " from wiring_word w join device d on d.id = w.device_id where d.site_id = ? order by w.device_id",
                EvidenceRows::word,
                siteId);
    }

    private static Evidence.Word word(ResultSet row) throws SQLException {
        OptionalInt port = Jdbc.number(row, "port_now");
        return new Evidence.Word(
                row.getLong("device_id"),
                row.getLong("parent_id"),
                port,
                row.getString("port_name"),
                row.getString("said_by"),
                Jdbc.sure(row, "said_at"));
    }

    /** Names of the site's devices, for words. */
    static Map<Long, String> names(List<Member> members) {
        Map<Long, String> names = new HashMap<>();
        new ArrayList<>(members).forEach(member -> names.put(member.id(), member.name()));
        return names;
    }
}
