package org.roundsman.demo.agent;

import java.util.List;
import org.roundsman.demo.SwitchManner;

/** BRIDGE-MIB (RFC 4188) and Q-BRIDGE-MIB (RFC 4363) of a switch. */
final class BridgeObjects {

    static final int STATUS_OTHER = 1;
    static final int STATUS_LEARNED = 3;
    static final int STATUS_SELF = 4;
    /** The VLANs of a switch that has them, each with a forwarding database of the same number. */
    static final int HOUSE_VLAN = 1;

    static final int GUEST_VLAN = 20;

    private static final String BRIDGE = "1.3.6.1.2.1.17.";
    private static final String PORT = BRIDGE + "1.4.1.";
    private static final String VLANS = BRIDGE + "7.1.";
    private static final int[] PLAIN_ROW = Names.numbers(BRIDGE + "4.3.1");
    private static final int[] VLAN_ROW = Names.numbers(VLANS + "2.2.1");
    private static final int[] VLAN_COUNT = Names.numbers(VLANS + "2.1.1");
    private static final int TRANSPARENT_ONLY = 2;
    private static final int AGING_SECONDS = 300;
    private static final int GVRP_OFF = 2;

    private BridgeObjects() {}

    static void add(Shape.Builder shape, List<Port> ports, SwitchManner manner) {
        shape.add(BRIDGE + "1.1", "0", (s, out) -> out.string(Tags.OCTET_STRING, InterfaceObjects.mac(s.device.mac())));
        shape.add(BRIDGE + "1.2", "0", (s, out) -> out.integer(Tags.INTEGER, ports.size()));
        shape.add(BRIDGE + "1.3", "0", (s, out) -> out.integer(Tags.INTEGER, TRANSPARENT_ONLY));
        for (Port port : ports) {
            String i = Integer.toString(port.number());
            shape.add(PORT + 1, i, (s, out) -> out.integer(Tags.INTEGER, port.number()));
            shape.add(PORT + 2, i, (s, out) -> out.integer(Tags.INTEGER, port.index()));
            shape.add(PORT + 3, i, (s, out) -> SystemObjects.objectId(out, "0.0"));
            shape.add(PORT + 4, i, (s, out) -> out.unsigned32(Tags.COUNTER32, 0));
            shape.add(PORT + 5, i, (s, out) -> out.unsigned32(Tags.COUNTER32, 0));
        }
        shape.add(BRIDGE + "4.1", "0", (s, out) -> out.unsigned32(Tags.COUNTER32, 0));
        shape.add(BRIDGE + "4.2", "0", (s, out) -> out.integer(Tags.INTEGER, AGING_SECONDS));
        if (manner == SwitchManner.WITH_VLANS) {
            shape.add(VLANS + "1.1", "0", (s, out) -> out.integer(Tags.INTEGER, 1));
            shape.add(VLANS + "1.2", "0", (s, out) -> out.integer(Tags.INTEGER, 4094));
            shape.add(VLANS + "1.3", "0", (s, out) -> out.unsigned32(Tags.GAUGE32, 64));
            shape.add(VLANS + "1.4", "0", (s, out) -> out.unsigned32(Tags.GAUGE32, 2));
            shape.add(VLANS + "1.5", "0", (s, out) -> out.integer(Tags.INTEGER, GVRP_OFF));
        }
    }

    /**
     * One learnt address.
     *
     * @param guest whether it is in the guests' VLAN
     */
    record Learnt(long mac, int port, int status, boolean guest) {}

    static void addForwarding(Shape.Builder shape, List<Learnt> addresses, SwitchManner manner) {
        boolean vlans = manner == SwitchManner.WITH_VLANS;
        for (Learnt one : addresses) {
            int[] instance = instance(one, vlans);
            int[] row = vlans ? VLAN_ROW : PLAIN_ROW;
            if (!vlans) {
                byte[] mac = InterfaceObjects.mac(one.mac());
                shape.add(row, 1, instance, (s, out) -> out.string(Tags.OCTET_STRING, mac));
            }
            shape.add(row, 2, instance, (s, out) -> out.integer(Tags.INTEGER, one.port()));
            shape.add(row, 3, instance, (s, out) -> out.integer(Tags.INTEGER, one.status()));
        }
        if (vlans) {
            long guests = addresses.stream().filter(Learnt::guest).count();
            long house = addresses.size() - guests;
            int[] first = {HOUSE_VLAN};
            int[] second = {GUEST_VLAN};
            shape.add(VLAN_COUNT, 2, first, (s, out) -> out.unsigned32(Tags.COUNTER32, house));
            shape.add(VLAN_COUNT, 2, second, (s, out) -> out.unsigned32(Tags.COUNTER32, guests));
        }
    }

    private static int[] instance(Learnt one, boolean vlans) {
        byte[] mac = InterfaceObjects.mac(one.mac());
        int lead = vlans ? 1 : 0;
        int[] numbers = new int[lead + mac.length];
        if (vlans) {
            numbers[0] = one.guest() ? GUEST_VLAN : HOUSE_VLAN;
        }
        for (int i = 0; i < mac.length; i++) {
            numbers[lead + i] = mac[i] & 0xFF;
        }
        return numbers;
    }
}
