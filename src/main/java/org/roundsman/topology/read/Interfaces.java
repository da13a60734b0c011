package org.roundsman.topology.read;

import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.roundsman.snmp.TableReading;
import org.roundsman.snmp.TableRow;
import org.roundsman.topology.LldpId;
import org.roundsman.topology.PortState;

/** The interfaces and bridge ports of one device, and which of its many numbers for a port means which interface. */
final class Interfaces {

    /** One interface; texts may be empty. */
    record Interface(
            int index,
            String name,
            String description,
            String alias,
            String mac,
            int type,
            PortState state,
            OptionalLong mbit) {}

    /**
     * Which interface a number means.
     *
     * @param index ifIndex; the negative of the number itself when it means none that is known
     * @param by how that was found, in words
     */
    record Meaning(int index, String by) {}

    private final Map<Integer, Interface> byIndex = new TreeMap<>();
    private final Map<Integer, Integer> indexOfBridgePort = new TreeMap<>();
    private final Map<Integer, TableRow> ownPorts = new HashMap<>();

    private Interfaces() {}

    static Interfaces of(TableReading reading) {
        Interfaces all = new Interfaces();
        Map<Long, TableRow> more = reading.table(Tables.MORE_INTERFACES).rows().stream()
                .collect(Collectors.toMap(row -> row.index(0), row -> row, (a, b) -> a));
        for (TableRow row : reading.table(Tables.INTERFACES).rows()) {
            int index = (int) row.index(0);
            all.byIndex.put(index, made(index, row, more.get(row.index(0))));
        }
        for (TableRow row : reading.table(Tables.BRIDGE_PORTS).rows()) {
            row.number(Tables.PORT_INTERFACE).ifPresent(index -> all.indexOfBridgePort.put((int) row.index(0), index));
        }
        reading.table(Tables.OWN_PORTS).rows().forEach(row -> all.ownPorts.put((int) row.index(0), row));
        return all;
    }

    private static Interface made(int index, TableRow row, TableRow more) {
        return new Interface(
                index,
                more == null ? "" : more.text(Tables.IF_NAME).strip(),
                row.text(Tables.IF_DESCRIPTION).strip(),
                more == null ? "" : more.text(Tables.IF_ALIAS).strip(),
                row.octets(Tables.IF_MAC)
                        .filter(octets -> octets.length == 6)
                        .map(LldpId::mac)
                        .orElse(""),
                row.number(Tables.IF_TYPE).orElse(0),
                PortState.of(row.number(Tables.IF_STATE).orElse(0)),
                mbit(more));
    }

    static OptionalLong mbit(TableRow more) {
        long mbit = more == null ? -1 : more.wide(Tables.IF_MBIT);
        return mbit > 0 ? OptionalLong.of(mbit) : OptionalLong.empty();
    }

    Collection<Interface> all() {
        return byIndex.values();
    }

    Optional<Interface> at(int index) {
        return Optional.ofNullable(byIndex.get(index));
    }

    boolean bridged() {
        return !indexOfBridgePort.isEmpty();
    }

    /** The bridge port on that interface. */
    OptionalInt bridgePortOf(int index) {
        return indexOfBridgePort.entrySet().stream()
                .filter(entry -> entry.getValue() == index)
                .mapToInt(Map.Entry::getKey)
                .findFirst();
    }

    Map<Integer, Integer> bridgePorts() {
        return indexOfBridgePort;
    }

    /** What a number of BRIDGE-MIB's tables means: dot1dBasePort, mapped by dot1dBasePortIfIndex. */
    int ofBridgePort(int number) {
        Integer index = indexOfBridgePort.get(number);
        if (index != null) {
            return index;
        }
        return indexOfBridgePort.isEmpty() && byIndex.containsKey(number) ? number : -number;
    }

    /**
     * What LLDP's number of a port means. By the text of LLDP-MIB it is dot1dBasePort on a bridge and ifIndex elsewhere;
     * bridges that use ifIndex all the same are in use (common practice, no source). So what LLDP itself says of the port
     * decides: its identifier, then its description, where exactly one interface has it.
     */
    Meaning ofLldp(int number) {
        TableRow own = ownPorts.get(number);
        if (own != null) {
            LldpId id = LldpId.port(
                    own.number(Tables.OWN_PORT_KIND).orElse(0),
                    own.octets(Tables.OWN_PORT).orElse(new byte[0]));
            Optional<Integer> byId = only(candidates(number), index -> identifies(id, index))
                    .or(() -> only(List.copyOf(byIndex.keySet()), index -> identifies(id, index)));
            if (byId.isPresent()) {
                return new Meaning(byId.get(), "LLDP's identifier of the port, " + id.words());
            }
            String text = own.text(Tables.OWN_PORT_TEXT).strip();
            Optional<Integer> byText = only(candidates(number), index -> describes(text, index))
                    .or(() -> only(List.copyOf(byIndex.keySet()), index -> describes(text, index)));
            if (byText.isPresent()) {
                return new Meaning(byText.get(), "LLDP's description of the port, " + text);
            }
        }
        Integer bridged = indexOfBridgePort.get(number);
        if (bridged != null) {
            return new Meaning(bridged, "bridge port " + number);
        }
        return byIndex.containsKey(number)
                ? new Meaning(number, "interface number " + number)
                : new Meaning(-number, "LLDP's number " + number + ", which no interface was found for");
    }

    /** What LLDP calls that port; empty where it does not say. */
    String lldpName(int number) {
        TableRow own = ownPorts.get(number);
        if (own == null) {
            return "";
        }
        LldpId id = LldpId.port(
                own.number(Tables.OWN_PORT_KIND).orElse(0),
                own.octets(Tables.OWN_PORT).orElse(new byte[0]));
        String text = own.text(Tables.OWN_PORT_TEXT).strip();
        return id.what() == LldpId.What.INTERFACE_NAME || text.isEmpty() ? id.text() : text;
    }

    private List<Integer> candidates(int number) {
        return java.util.stream.Stream.of(indexOfBridgePort.get(number), byIndex.containsKey(number) ? number : null)
                .filter(java.util.Objects::nonNull)
                .distinct()
                .toList();
    }

    private static Optional<Integer> only(List<Integer> of, java.util.function.IntPredicate fits) {
        List<Integer> found = of.stream().filter(fits::test).toList();
        return found.size() == 1 ? Optional.of(found.get(0)) : Optional.empty();
    }

    private boolean identifies(LldpId id, int index) {
        Interface at = byIndex.get(index);
        if (at == null || id.text().isEmpty()) {
            return false;
        }
        return switch (id.what()) {
            case INTERFACE_NAME -> id.text().equals(at.name) || id.text().equals(at.description);
            case INTERFACE_ALIAS -> id.text().equals(at.alias);
            case MAC -> id.text().equals(at.mac);
            case LOCAL ->
                id.text().equals(at.name)
                        || id.text().equals(at.description)
                        || id.text().equals(at.mac);
            default -> false;
        };
    }

    private boolean describes(String text, int index) {
        Interface at = byIndex.get(index);
        return at != null && !text.isEmpty() && (text.equals(at.description) || text.equals(at.name));
    }
}
