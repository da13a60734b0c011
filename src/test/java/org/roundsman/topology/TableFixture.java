package org.roundsman.topology;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.measure.Outcome;
import org.roundsman.snmp.ReadTable;
import org.roundsman.snmp.TableQuestion;
import org.roundsman.snmp.TableReading;
import org.roundsman.snmp.TableRow;
import org.roundsman.snmp.TableValue;
import org.roundsman.topology.read.Tables;

/**
 * Tables of an invented device, written down by their numbers in the standards: LLDP-MIB (IEEE 802.1AB-2005), BRIDGE-MIB
 * (RFC 4188), IF-MIB (RFC 2863), POWER-ETHERNET-MIB (RFC 3621).
 */
public final class TableFixture {

    public static final String IF = "1.3.6.1.2.1.2.2.1.";
    public static final String IFX = "1.3.6.1.2.1.31.1.1.1.";
    public static final String BRIDGE_PORT = "1.3.6.1.2.1.17.1.4.1.2.";
    public static final String FDB = "1.3.6.1.2.1.17.4.3.1.";
    public static final String QFDB = "1.3.6.1.2.1.17.7.1.2.2.1.";
    public static final String OWN = "1.0.8802.1.1.2.1.3.";
    public static final String LOCAL_PORT = "1.0.8802.1.1.2.1.3.7.1.";
    public static final String NEIGHBOUR = "1.0.8802.1.1.2.1.4.1.1.";
    public static final String ADDRESS = "1.0.8802.1.1.2.1.4.2.1.3.";
    public static final String POWER = "1.3.6.1.2.1.105.1.1.1.";
    public static final String SUPPLY = "1.3.6.1.2.1.105.1.3.1.1.";

    private final Map<String, TableValue> objects = new HashMap<>();

    public TableFixture with(String oid, long number) {
        objects.put(oid, new TableValue.Whole(number));
        return this;
    }

    public TableFixture with(String oid, String text) {
        return octets(oid, text.getBytes(java.nio.charset.StandardCharsets.UTF_8));
    }

    public TableFixture octets(String oid, byte[] octets) {
        objects.put(oid, new TableValue.Octets(octets));
        return this;
    }

    public TableFixture mac(String oid, String mac) {
        return octets(oid, octets(mac));
    }

    public TableFixture without(String prefix) {
        objects.keySet().removeIf(oid -> oid.startsWith(prefix));
        return this;
    }

    public static byte[] octets(String mac) {
        return java.util.HexFormat.ofDelimiter(":").parseHex(mac);
    }

    /** A switch with so many ports: bridge port n is interface 10000 + n, named after its number. */
    public static TableFixture aSwitch(String mac, int ports) {
        TableFixture tables = new TableFixture();
        tables.mac("1.3.6.1.2.1.17.1.1.0", mac);
        tables.with(OWN + "1.0", 4).mac(OWN + "2.0", mac);
        for (int n = 1; n <= ports; n++) {
            int index = 10_000 + n;
            tables.with(IF + "2." + index, "Port " + n)
                    .with(IF + "3." + index, 6)
                    .with(IF + "8." + index, 1)
                    .with(IFX + "1." + index, "" + n)
                    .with(IFX + "15." + index, 1_000)
                    .with(BRIDGE_PORT + n, index)
                    .with(LOCAL_PORT + "2." + n, 7)
                    .with(LOCAL_PORT + "3." + n, "" + n)
                    .with(LOCAL_PORT + "4." + n, "Port " + n);
        }
        return tables;
    }

    /** A neighbour on an LLDP port that calls itself by MAC addresses. */
    public TableFixture hears(int port, String mac, String name) {
        String index = "0." + port + ".1";
        return with(NEIGHBOUR + "4." + index, 4)
                .mac(NEIGHBOUR + "5." + index, mac)
                .with(NEIGHBOUR + "6." + index, 3)
                .mac(NEIGHBOUR + "7." + index, mac)
                .with(NEIGHBOUR + "9." + index, name);
    }

    /** An address that the bridge learnt on a bridge port. */
    public TableFixture learnt(String mac, int port) {
        StringBuilder index = new StringBuilder();
        for (byte octet : octets(mac)) {
            index.append('.').append(octet & 0xff);
        }
        return with(FDB + "2" + index, port).with(FDB + "3" + index, 3);
    }

    /** PoE of a port in group 1. */
    public TableFixture power(int port, int state, int classValue) {
        return with(POWER + "3.1." + port, 1)
                .with(POWER + "6.1." + port, state)
                .with(POWER + "10.1." + port, classValue);
    }

    /** What reading such a device brings. */
    public TableReading reading(DeviceKind kind, Instant at) {
        return new TableReading(
                at, Outcome.ANSWERED, Tables.of(kind).stream().map(this::table).toList(), 1, 0, List.of());
    }

    public TableReading states(Instant at) {
        return new TableReading(
                at, Outcome.ANSWERED, Tables.states().stream().map(this::table).toList(), 1, 0, List.of());
    }

    private ReadTable table(TableQuestion question) {
        Map<List<Long>, Map<Integer, TableValue>> rows =
                new TreeMap<>((a, b) -> Arrays.compare(a.toArray(Long[]::new), b.toArray(Long[]::new)));
        for (int column : question.columns()) {
            String prefix = question.entry() + "." + column + ".";
            objects.forEach((oid, value) -> {
                if (oid.startsWith(prefix)) {
                    List<Long> index = Arrays.stream(
                                    oid.substring(prefix.length()).split("[.]"))
                            .map(Long::valueOf)
                            .collect(Collectors.toCollection(ArrayList::new));
                    rows.computeIfAbsent(index, made -> new HashMap<>()).put(column, value);
                }
            });
        }
        List<TableRow> list = new ArrayList<>();
        rows.forEach((index, values) -> list.add(new TableRow(index, values)));
        return new ReadTable(question, list, true);
    }
}
