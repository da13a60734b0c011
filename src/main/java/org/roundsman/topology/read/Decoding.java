package org.roundsman.topology.read;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeMap;
import org.roundsman.snmp.TableReading;
import org.roundsman.snmp.TableRow;
import org.roundsman.topology.ChassisId;
import org.roundsman.topology.LldpId;
import org.roundsman.topology.NeighbourSeen.Announced;
import org.roundsman.topology.Port;
import org.roundsman.topology.PortState;
import org.roundsman.topology.Power;
import org.roundsman.topology.Supply;

/** Makes sense of the tables of one device. Pure. */
public final class Decoding {

    /** ifTypes that are wires: Ethernet and its older names, and groups of such ports (IANAifType-MIB). */
    private static final Set<Integer> WIRES = Set.of(6, 62, 69, 117);

    private static final int LEARNED = 3;
    private static final int SELF = 4;
    private static final int MOST_ADDRESSES = 8;

    private final TableReading reading;
    private final Interfaces interfaces;

    private Decoding(TableReading reading) {
        this.reading = reading;
        this.interfaces = Interfaces.of(reading);
    }

    /** What a full reading tells. */
    public static Snapshot of(TableReading reading) {
        return new Decoding(reading).snapshot();
    }

    private Snapshot snapshot() {
        List<Snapshot.Heard> neighbours = neighbours();
        Map<String, Set<Integer>> learnt = learnt();
        Optional<TableRow> own = reading.table(Tables.OWN_LLDP).rows().stream().findFirst();
        return new Snapshot(
                reading.at(),
                own.flatMap(Decoding::chassis),
                systemName(own),
                addresses(own),
                ports(neighbours, learnt),
                neighbours,
                learnt,
                supplies(reading),
                whole(own.isPresent()),
                reading.remarks());
    }

    private Snapshot.Whole whole(boolean lldp) {
        return new Snapshot.Whole(
                whole(Tables.INTERFACES) && whole(Tables.MORE_INTERFACES) && whole(Tables.BRIDGE_PORTS),
                whole(Tables.NEIGHBOURS),
                whole(Tables.FORWARDING) && whole(Tables.VLAN_FORWARDING),
                whole(Tables.POWER_PORTS),
                new Snapshot.Offered(
                        lldp || !reading.table(Tables.NEIGHBOURS).rows().isEmpty(),
                        interfaces.bridged(),
                        !reading.table(Tables.POWER_PORTS).rows().isEmpty()));
    }

    /** Read to its end, or not asked for at all. */
    private boolean whole(String entry) {
        return reading.tables().stream()
                .filter(table -> table.question().entry().equals(entry))
                .allMatch(org.roundsman.snmp.ReadTable::complete);
    }

    private static Optional<ChassisId> chassis(TableRow own) {
        return own.octets(Tables.OWN_CHASSIS)
                .filter(octets -> octets.length > 0)
                .map(octets -> new ChassisId(own.number(Tables.OWN_CHASSIS_KIND).orElse(0), octets));
    }

    private String systemName(Optional<TableRow> own) {
        return reading.table(Tables.SYSTEM).rows().stream()
                .map(row -> row.text(Tables.SYSTEM_NAME))
                .filter(text -> !text.isBlank())
                .findFirst()
                .or(() -> own.map(row -> row.text(Tables.OWN_NAME)))
                .map(String::strip)
                .orElse("");
    }

    private Set<String> addresses(Optional<TableRow> own) {
        Set<String> addresses = new LinkedHashSet<>();
        interfaces.all().forEach(each -> addresses.add(each.mac()));
        reading.table(Tables.BRIDGE).rows().forEach(row -> row.octets(Tables.BRIDGE_MAC)
                .filter(octets -> octets.length == 6)
                .ifPresent(octets -> addresses.add(LldpId.mac(octets))));
        own.flatMap(Decoding::chassis)
                .flatMap(id -> LldpId.chassis(id.kind(), id.octets()).mac())
                .ifPresent(addresses::add);
        reading.table(Tables.FORWARDING).rows().stream()
                .filter(row -> row.number(Tables.LEARNT_STATUS).orElse(0) == SELF)
                .forEach(row -> addresses.add(row.macInIndex(0)));
        addresses.removeIf(mac -> !Macs.ownedByOne(mac));
        return addresses;
    }

    private List<Snapshot.Heard> neighbours() {
        Map<List<Long>, TableRow> newest = new TreeMap<>((a, b) -> Arrays.compare(longs(a), longs(b)));
        for (TableRow row : reading.table(Tables.NEIGHBOURS).rows()) {
            // A time filter may give one row several times (RFC 4502): the one that changed last counts.
            newest.merge(List.of(row.index(1), row.index(2)), row, (a, b) -> a.index(0) > b.index(0) ? a : b);
        }
        Map<List<Long>, Set<String>> addresses = managementAddresses();
        List<Snapshot.Heard> heard = new ArrayList<>();
        newest.forEach((key, row) -> {
            int local = key.get(0).intValue();
            Interfaces.Meaning meaning = interfaces.ofLldp(local);
            heard.add(new Snapshot.Heard(
                    meaning.index(), local, meaning.by(), announced(row, addresses.getOrDefault(key, Set.of()))));
        });
        return heard;
    }

    private static long[] longs(List<Long> list) {
        return list.stream().mapToLong(Long::longValue).toArray();
    }

    private static Announced announced(TableRow row, Set<String> addresses) {
        byte[] abilities = row.octets(Tables.ABILITIES).orElse(new byte[0]);
        return new Announced(
                row.number(Tables.CHASSIS_KIND).orElse(0),
                row.octets(Tables.CHASSIS).orElse(new byte[0]),
                row.number(Tables.PORT_KIND).orElse(0),
                row.octets(Tables.PORT).orElse(new byte[0]),
                row.text(Tables.PORT_TEXT).strip(),
                row.text(Tables.NAME).strip(),
                row.text(Tables.TEXT).strip(),
                abilities.length == 0 ? 0 : abilities[0] & 0xff,
                List.copyOf(addresses));
    }

    /** lldpRemManAddrTable keeps the address in its index: time, port, neighbour, family, length, octets. */
    private Map<List<Long>, Set<String>> managementAddresses() {
        Map<List<Long>, Set<String>> addresses = new HashMap<>();
        for (TableRow row : reading.table(Tables.ADDRESSES).rows()) {
            long length = row.index(4);
            if (length < 0 || row.index().size() != 5 + length) {
                continue;
            }
            byte[] octets = new byte[(int) length];
            for (int i = 0; i < length; i++) {
                octets[i] = (byte) row.index(5 + i);
            }
            LldpId.address((int) row.index(3), octets).ifPresent(address -> {
                Set<String> of =
                        addresses.computeIfAbsent(List.of(row.index(1), row.index(2)), key -> new LinkedHashSet<>());
                if (of.size() < MOST_ADDRESSES) {
                    of.add(address);
                }
            });
        }
        return addresses;
    }

    private Map<String, Set<Integer>> learnt() {
        Map<String, Set<Integer>> learnt = new HashMap<>();
        reading.table(Tables.FORWARDING).rows().forEach(row -> learnt(learnt, row, row.macInIndex(0)));
        reading.table(Tables.VLAN_FORWARDING).rows().forEach(row -> learnt(learnt, row, row.macInIndex(1)));
        return learnt;
    }

    /** Port 0 means that the bridge does not know where. Some agents leave the status out. */
    private void learnt(Map<String, Set<Integer>> learnt, TableRow row, String mac) {
        int port = row.number(Tables.LEARNT_PORT).orElse(0);
        boolean learned = row.number(Tables.LEARNT_STATUS).orElse(LEARNED) == LEARNED;
        if (port > 0 && learned && Macs.ownedByOne(mac)) {
            learnt.computeIfAbsent(mac, key -> new HashSet<>()).add(interfaces.ofBridgePort(port));
        }
    }

    private List<Port> ports(List<Snapshot.Heard> neighbours, Map<String, Set<Integer>> learnt) {
        Map<Integer, Integer> macs = new HashMap<>();
        learnt.values().forEach(ports -> ports.forEach(port -> macs.merge(port, 1, Integer::sum)));
        Map<Integer, Power> power =
                PowerPorts.of(reading.table(Tables.POWER_PORTS).rows(), interfaces);
        Map<Integer, Port> ports = new TreeMap<>();
        for (Interfaces.Interface each : interfaces.all()) {
            boolean wire = WIRES.contains(each.type())
                    || interfaces.bridgePortOf(each.index()).isPresent()
                    || power.containsKey(each.index());
            if (wire || neighbours.stream().anyMatch(heard -> heard.port() == each.index())) {
                ports.put(each.index(), port(each, macs, power));
            }
        }
        interfaces
                .bridgePorts()
                .forEach((bridgePort, index) ->
                        ports.computeIfAbsent(index, made -> bare(index, "", OptionalInt.of(bridgePort), macs, power)));
        neighbours.forEach(heard -> ports.computeIfAbsent(
                heard.port(),
                made -> bare(heard.port(), interfaces.lldpName(heard.localPort()), OptionalInt.empty(), macs, power)));
        return List.copyOf(ports.values());
    }

    private Port port(Interfaces.Interface each, Map<Integer, Integer> macs, Map<Integer, Power> power) {
        return new Port(
                each.index(),
                each.name(),
                each.description(),
                each.alias(),
                each.mac(),
                each.type(),
                interfaces.bridgePortOf(each.index()),
                each.mbit(),
                each.state(),
                macs.getOrDefault(each.index(), 0),
                Optional.ofNullable(power.get(each.index())),
                true);
    }

    /** A port that no interface table tells about. */
    private static Port bare(
            int number, String name, OptionalInt bridgePort, Map<Integer, Integer> macs, Map<Integer, Power> power) {
        return new Port(
                number,
                name,
                "",
                "",
                "",
                0,
                bridgePort,
                OptionalLong.empty(),
                PortState.UNKNOWN,
                macs.getOrDefault(number, 0),
                Optional.ofNullable(power.get(number)),
                true);
    }

    static List<Supply> supplies(TableReading reading) {
        return reading.table(Tables.SUPPLIES).rows().stream()
                .map(row -> new Supply(
                        (int) row.index(0),
                        row.number(Tables.SUPPLY_STATE).orElse(0),
                        row.number(Tables.SUPPLY_WATTS).orElse(0),
                        row.number(Tables.SUPPLY_USED).orElse(0)))
                .toList();
    }
}
