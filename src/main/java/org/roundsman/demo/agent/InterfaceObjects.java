package org.roundsman.demo.agent;

import java.util.List;
import org.roundsman.demo.model.Counters;

/** IF-MIB (RFC 2863): ifNumber, ifTable, ifXTable, without the deprecated columns. */
final class InterfaceObjects {

    private static final String INTERFACES = "1.3.6.1.2.1.2.";
    private static final String ROW = INTERFACES + "2.1.";
    private static final String WIDE_ROW = "1.3.6.1.2.1.31.1.1.1.";
    private static final int UP = 1;
    private static final int DOWN = 2;
    private static final int TRUE = 1;
    private static final int FALSE = 2;
    private static final int MEAN_PACKET_OCTETS = 640;
    /** Of so many packets, one goes to many. */
    private static final int PACKETS_PER_MULTICAST = 50;

    private static final long MEGABIT = 1_000_000;

    private InterfaceObjects() {}

    static void add(Shape.Builder shape, List<Port> ports) {
        shape.add(INTERFACES + "1", "0", (s, out) -> out.integer(Tags.INTEGER, ports.size()));
        for (Port port : ports) {
            addRow(shape, port);
            addRowCounters(shape, port);
            addWideRow(shape, port);
            addWideCounters(shape, port);
        }
    }

    private static void addRow(Shape.Builder shape, Port port) {
        String i = Integer.toString(port.index());
        shape.add(ROW + 1, i, (s, out) -> out.integer(Tags.INTEGER, port.index()));
        shape.add(ROW + 2, i, (s, out) -> SystemObjects.text(out, port.name()));
        shape.add(ROW + 3, i, (s, out) -> out.integer(Tags.INTEGER, port.type()));
        shape.add(ROW + 4, i, (s, out) -> out.integer(Tags.INTEGER, 1500));
        shape.add(ROW + 5, i, (s, out) -> out.unsigned32(Tags.GAUGE32, speed(s, port) * MEGABIT));
        shape.add(ROW + 6, i, (s, out) -> out.string(Tags.OCTET_STRING, mac(s.device.mac() + port.macOffset())));
        shape.add(ROW + 7, i, (s, out) -> out.integer(Tags.INTEGER, enabled(s, port) ? UP : DOWN));
        shape.add(ROW + 8, i, (s, out) -> out.integer(Tags.INTEGER, up(s, port) ? UP : DOWN));
        shape.add(ROW + 9, i, (s, out) -> out.unsigned32(Tags.TIME_TICKS, lastChange(s, port)));
    }

    private static void addRowCounters(Shape.Builder shape, Port port) {
        String i = Integer.toString(port.index());
        shape.add(ROW + 10, i, (s, out) -> out.unsigned32(Tags.COUNTER32, in(s, port)));
        shape.add(ROW + 11, i, (s, out) -> out.unsigned32(Tags.COUNTER32, packetsIn(s, port)));
        shape.add(ROW + 13, i, (s, out) -> out.unsigned32(Tags.COUNTER32, 0));
        shape.add(ROW + 14, i, (s, out) -> out.unsigned32(Tags.COUNTER32, errors(s, port)));
        shape.add(ROW + 15, i, (s, out) -> out.unsigned32(Tags.COUNTER32, 0));
        shape.add(ROW + 16, i, (s, out) -> out.unsigned32(Tags.COUNTER32, out(s, port)));
        shape.add(ROW + 17, i, (s, out) -> out.unsigned32(Tags.COUNTER32, packetsOut(s, port)));
        shape.add(ROW + 19, i, (s, out) -> out.unsigned32(Tags.COUNTER32, 0));
        shape.add(ROW + 20, i, (s, out) -> out.unsigned32(Tags.COUNTER32, 0));
    }

    private static void addWideRow(Shape.Builder shape, Port port) {
        String i = Integer.toString(port.index());
        boolean wired = port.type() == Port.ETHERNET;
        shape.add(WIDE_ROW + 1, i, (s, out) -> SystemObjects.text(out, port.name()));
        shape.add(WIDE_ROW + 14, i, (s, out) -> out.integer(Tags.INTEGER, wired ? TRUE : FALSE));
        shape.add(WIDE_ROW + 15, i, (s, out) -> out.unsigned32(Tags.GAUGE32, speed(s, port)));
        shape.add(WIDE_ROW + 16, i, (s, out) -> out.integer(Tags.INTEGER, FALSE));
        shape.add(WIDE_ROW + 17, i, (s, out) -> out.integer(Tags.INTEGER, wired ? TRUE : FALSE));
        shape.add(WIDE_ROW + 18, i, (s, out) -> SystemObjects.text(out, alias(s, port)));
        shape.add(WIDE_ROW + 19, i, (s, out) -> out.unsigned32(Tags.TIME_TICKS, 0));
    }

    private static void addWideCounters(Shape.Builder shape, Port port) {
        String i = Integer.toString(port.index());
        shape.add(WIDE_ROW + 2, i, (s, out) -> out.unsigned32(Tags.COUNTER32, many(packetsIn(s, port))));
        shape.add(WIDE_ROW + 3, i, (s, out) -> out.unsigned32(Tags.COUNTER32, many(packetsIn(s, port)) / 2));
        shape.add(WIDE_ROW + 4, i, (s, out) -> out.unsigned32(Tags.COUNTER32, many(packetsOut(s, port))));
        shape.add(WIDE_ROW + 5, i, (s, out) -> out.unsigned32(Tags.COUNTER32, many(packetsOut(s, port)) / 2));
        shape.add(WIDE_ROW + 6, i, (s, out) -> out.unsigned64(Tags.COUNTER64, in(s, port)));
        shape.add(WIDE_ROW + 7, i, (s, out) -> out.unsigned64(Tags.COUNTER64, packetsIn(s, port)));
        shape.add(WIDE_ROW + 8, i, (s, out) -> out.unsigned64(Tags.COUNTER64, many(packetsIn(s, port))));
        shape.add(WIDE_ROW + 9, i, (s, out) -> out.unsigned64(Tags.COUNTER64, many(packetsIn(s, port)) / 2));
        shape.add(WIDE_ROW + 10, i, (s, out) -> out.unsigned64(Tags.COUNTER64, out(s, port)));
        shape.add(WIDE_ROW + 11, i, (s, out) -> out.unsigned64(Tags.COUNTER64, packetsOut(s, port)));
        shape.add(WIDE_ROW + 12, i, (s, out) -> out.unsigned64(Tags.COUNTER64, many(packetsOut(s, port))));
        shape.add(WIDE_ROW + 13, i, (s, out) -> out.unsigned64(Tags.COUNTER64, many(packetsOut(s, port)) / 2));
    }

    private static boolean enabled(AgentState state, Port port) {
        return state.ports() == null || state.ports().enabled(port.number());
    }

    private static boolean up(AgentState state, Port port) {
        return state.ports() == null || state.ports().up(port.number());
    }

    private static long lastChange(AgentState state, Port port) {
        return state.ports() == null ? 0 : state.ports().lastChange(port.number());
    }

    private static String alias(AgentState state, Port port) {
        return state.ports() == null ? "" : state.ports().alias(port.number());
    }

    private static long speed(AgentState state, Port port) {
        if (port.uplink()) {
            return state.figures.portSpeed;
        }
        return port.type() == Port.WIRELESS ? 300 : state.ports().speed(port.number());
    }

    /** What comes in by an access point's uplink goes out by its radios, and the other way round. */
    private static long in(AgentState state, Port port) {
        if (port.uplink()) {
            return state.counters.count(Counters.OCTETS_IN);
        }
        return port.type() == Port.WIRELESS
                ? state.counters.count(Counters.OCTETS_OUT) * port.perMille() / 1000
                : state.ports().octetsIn(port.number());
    }

    private static long out(AgentState state, Port port) {
        if (port.uplink()) {
            return state.counters.count(Counters.OCTETS_OUT);
        }
        return port.type() == Port.WIRELESS
                ? state.counters.count(Counters.OCTETS_IN) * port.perMille() / 1000
                : state.ports().octetsOut(port.number());
    }

    private static long packetsIn(AgentState state, Port port) {
        return in(state, port) / MEAN_PACKET_OCTETS;
    }

    private static long packetsOut(AgentState state, Port port) {
        return out(state, port) / MEAN_PACKET_OCTETS;
    }

    private static long many(long packets) {
        return packets / PACKETS_PER_MULTICAST;
    }

    private static long errors(AgentState state, Port port) {
        return port.uplink() ? state.counters.count(Counters.ERRORS) : 0;
    }

    static byte[] mac(long address) {
        byte[] octets = new byte[6];
        for (int i = 0; i < octets.length; i++) {
            octets[i] = (byte) (address >> 8 * (5 - i));
        }
        return octets;
    }
}
