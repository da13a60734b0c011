package org.roundsman.topology.store;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.measure.Outcome;
import org.roundsman.topology.Attachment;
import org.roundsman.topology.NeighbourSeen;
import org.roundsman.topology.Port;
import org.roundsman.topology.ReadNote;
import org.roundsman.topology.SiteTree;
import org.roundsman.topology.SiteWiring;
import org.roundsman.topology.Supply;

/** Reads the wiring of a site for those who show it or find causes by it: seven statements, whatever the site's size. */
public final class WiringRows {

    private WiringRows() {}

    /** The tree and all that stands behind it. */
    public static SiteWiring of(Connection connection, long siteId) throws SQLException {
        Map<Long, List<Port>> ports = EvidenceRows.ports(connection, siteId);
        Map<Long, List<NeighbourSeen>> neighbours = EvidenceRows.neighbours(connection, siteId).stream()
                .collect(Collectors.groupingBy(NeighbourSeen::deviceId));
        return new SiteWiring(
                tree(connection, siteId, ports),
                ports,
                neighbours,
                supplies(connection, siteId),
                reads(connection, siteId));
    }

    /** The tree alone. */
    public static SiteTree tree(Connection connection, long siteId) throws SQLException {
        return tree(connection, siteId, EvidenceRows.ports(connection, siteId));
    }

    private static SiteTree tree(Connection connection, long siteId, Map<Long, List<Port>> ports) throws SQLException {
        Map<Long, Attachment> places = PlaceRows.ofSite(connection, siteId);
        List<SiteTree.Item> items = Jdbc.rows(
                connection,
                "select id, name, kind from device where site_id = ? order by id",
                row -> item(row, places),
                siteId);
        return SiteTree.of(items, (device, number) -> ports.getOrDefault(device, List.of()).stream()
                .filter(port -> port.number() == number)
                .findFirst());
    }

    private static SiteTree.Item item(ResultSet row, Map<Long, Attachment> places) throws SQLException {
        long id = row.getLong("id");
        Attachment place = Optional.ofNullable(places.get(id))
                .orElseGet(() -> Attachment.unknown(id, "The wiring of this site was not read yet", List.of()));
        return new SiteTree.Item(id, row.getString("name"), DeviceKind.valueOf(row.getString("kind")), place);
    }

    private static Map<Long, List<Supply>> supplies(Connection connection, long siteId) throws SQLException {
        Map<Long, List<Supply>> supplies = new HashMap<>();
        Jdbc.rows(
                        connection,
                        "select s.* from wiring_supply s join device d on d.id = s.device_id where d.site_id = ?"
                                + " order by s.device_id, s.pse_group",
                        row -> Map.entry(
                                row.getLong("device_id"),
                                new Supply(
                                        row.getInt("pse_group"),
                                        row.getInt("state"),
                                        row.getInt("watts"),
                                        row.getInt("used_watts"))),
                        siteId)
                .forEach(entry -> supplies.computeIfAbsent(entry.getKey(), made -> new ArrayList<>())
                        .add(entry.getValue()));
        return supplies;
    }

    private static Map<Long, ReadNote> reads(Connection connection, long siteId) throws SQLException {
        Map<Long, ReadNote> reads = new HashMap<>();
        Jdbc.rows(
                        connection,
                        "select r.* from wiring_read r join device d on d.id = r.device_id where d.site_id = ?",
                        row -> Map.entry(row.getLong("device_id"), read(row)),
                        siteId)
                .forEach(entry -> reads.put(entry.getKey(), entry.getValue()));
        return reads;
    }

    private static ReadNote read(ResultSet row) throws SQLException {
        return new ReadNote(
                Jdbc.sure(row, "tried_at"),
                Outcome.ofCode(row.getInt("outcome")),
                Jdbc.moment(row, "read_at"),
                Jdbc.moment(row, "state_at"),
                row.getBoolean("complete"),
                row.getBoolean("lldp"),
                row.getBoolean("bridge"),
                row.getBoolean("power"),
                row.getInt("requests"),
                Jdbc.texts(row, "remarks"));
    }
}
