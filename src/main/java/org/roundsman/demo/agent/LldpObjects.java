package org.roundsman.demo.agent;

import java.util.List;
import org.roundsman.demo.DemoDevice;

/** LLDP-MIB (IEEE 802.1AB-2005): configuration, what the device says of itself, and whom it hears. */
final class LldpObjects {

    private static final String LLDP = "1.0.8802.1.1.2.1.";
    private static final String LOCAL = LLDP + "3.";
    private static final String LOCAL_PORT = LOCAL + "7.1.";
    private static final int[] LOCAL_ADDRESS = Names.numbers(LOCAL + "8.1");
    private static final int[] REMOTE = Names.numbers(LLDP + "4.1.1");
    private static final int[] REMOTE_ADDRESS = Names.numbers(LLDP + "4.2.1");
    private static final int IPV4 = 1;
    private static final int BY_IF_INDEX = 2;
    private static final int OCTETS_WITH_SUBTYPE = 5;
    /** An access point that has just started hears its switch's next frame half a minute later. */
    private static final int ACCESS_POINT_TIME_MARK = 3000;

    private static final byte[] NO_OBJECT = Names.encoded("0.0");

    private LldpObjects() {}

    /** What is the same for every device of the shape: everything but the rows of management addresses and neighbours. */
    static void add(Shape.Builder shape, DemoDevice like, List<Port> ports) {
        shape.add(LLDP + "1.1", "0", (s, out) -> out.integer(Tags.INTEGER, NeighboursNow.TX_SECONDS));
        shape.add(LLDP + "1.2", "0", (s, out) -> out.integer(Tags.INTEGER, NeighboursNow.HOLD));
        shape.add(LLDP + "1.3", "0", (s, out) -> out.integer(Tags.INTEGER, 2));
        shape.add(LLDP + "1.4", "0", (s, out) -> out.integer(Tags.INTEGER, 2));
        shape.add(LLDP + "1.5", "0", (s, out) -> out.integer(Tags.INTEGER, 5));
        LldpIdentity shared = LldpIdentity.of(like);
        byte[] capabilities = {(byte) shared.capabilities()};
        shape.add(LOCAL + 1, "0", (s, out) -> out.integer(Tags.INTEGER, shared.chassisSubtype()));
        shape.add(LOCAL + 2, "0", (s, out) -> out.string(Tags.OCTET_STRING, LldpIdentity.chassisId(s.device)));
        shape.add(LOCAL + 3, "0", (s, out) -> SystemObjects.text(out, s.device.fullName()));
        shape.add(LOCAL + 4, "0", (s, out) -> SystemObjects.text(out, description(s.device)));
        shape.add(LOCAL + 5, "0", (s, out) -> out.string(Tags.OCTET_STRING, capabilities));
        shape.add(LOCAL + 6, "0", (s, out) -> out.string(Tags.OCTET_STRING, capabilities));
        for (Port port : ports) {
            if (port.number() > 0) {
                addLocalPort(shape, shared, port);
            }
        }
    }

    private static void addLocalPort(Shape.Builder shape, LldpIdentity shared, Port port) {
        String i = Integer.toString(port.number());
        shape.add(LOCAL_PORT + 2, i, (s, out) -> out.integer(Tags.INTEGER, shared.portSubtype()));
        shape.add(LOCAL_PORT + 3, i, (s, out) -> out.string(Tags.OCTET_STRING, LldpIdentity.portId(s.device, port)));
        shape.add(LOCAL_PORT + 4, i, (s, out) -> SystemObjects.text(out, port.name()));
    }

    /** The one neighbour of an access point: the switch that it hangs on, while that says who it is. */
    static void addSwitchHeard(Shape.Builder shape) {
        int[] instance = {ACCESS_POINT_TIME_MARK, 1, 1};
        for (int column = 4; column <= 12; column++) {
            int asked = column;
            shape.add(REMOTE, column, instance, (s, out) -> {
                if (s.upMillis() / 10 >= ACCESS_POINT_TIME_MARK && s.heard() != null) {
                    write(s.heard(), asked, out);
                }
            });
        }
    }

    static void addNeighbours(Shape.Builder shape, DemoDevice device, List<NeighboursNow.Neighbour> neighbours) {
        addManagement(shape, device);
        for (NeighboursNow.Neighbour one : neighbours) {
            int[] instance = {(int) one.timeMark(), one.localPort(), one.index()};
            for (int column = 4; column <= 12; column++) {
                int asked = column;
                shape.add(REMOTE, column, instance, (s, out) -> write(one, asked, out));
            }
            int[] address = concat(instance, address(one.device()));
            int interfaceId = Port.numbered(one.device(), one.port()).index();
            shape.add(REMOTE_ADDRESS, 3, address, (s, out) -> out.integer(Tags.INTEGER, BY_IF_INDEX));
            shape.add(REMOTE_ADDRESS, 4, address, (s, out) -> out.integer(Tags.INTEGER, interfaceId));
            shape.add(REMOTE_ADDRESS, 5, address, (s, out) -> out.bytes(NO_OBJECT, 0, NO_OBJECT.length));
        }
    }

    private static void addManagement(Shape.Builder shape, DemoDevice device) {
        int[] own = address(device);
        int uplink = Port.uplinkIndex(device);
        shape.add(LOCAL_ADDRESS, 3, own, (s, out) -> out.integer(Tags.INTEGER, OCTETS_WITH_SUBTYPE));
        shape.add(LOCAL_ADDRESS, 4, own, (s, out) -> out.integer(Tags.INTEGER, BY_IF_INDEX));
        shape.add(LOCAL_ADDRESS, 5, own, (s, out) -> out.integer(Tags.INTEGER, uplink));
        shape.add(LOCAL_ADDRESS, 6, own, (s, out) -> out.bytes(NO_OBJECT, 0, NO_OBJECT.length));
    }

    /** An index of family, length and octets: the address has no fixed length (RFC 2578, 7.7). */
    private static int[] address(DemoDevice device) {
        byte[] octets = LldpIdentity.address(device);
        int[] numbers = new int[2 + octets.length];
        numbers[0] = IPV4;
        numbers[1] = octets.length;
        for (int i = 0; i < octets.length; i++) {
            numbers[2 + i] = octets[i] & 0xFF;
        }
        return numbers;
    }

    private static int[] concat(int[] first, int[] second) {
        int[] both = java.util.Arrays.copyOf(first, first.length + second.length);
        System.arraycopy(second, 0, both, first.length, second.length);
        return both;
    }

    private static void write(NeighboursNow.Neighbour one, int column, BerWriter out) {
        LldpIdentity identity = LldpIdentity.of(one.device());
        Port port = Port.numbered(one.device(), one.port());
        switch (column) {
            case 4 -> out.integer(Tags.INTEGER, identity.chassisSubtype());
            case 5 -> out.string(Tags.OCTET_STRING, LldpIdentity.chassisId(one.device()));
            case 6 -> out.integer(Tags.INTEGER, identity.portSubtype());
            case 7 -> out.string(Tags.OCTET_STRING, LldpIdentity.portId(one.device(), port));
            case 8 -> SystemObjects.text(out, port.name());
            case 9 -> SystemObjects.text(out, one.device().fullName());
            case 10 -> SystemObjects.text(out, description(one.device()));
            default -> out.string(Tags.OCTET_STRING, new byte[] {(byte) identity.capabilities()});
        }
    }

    private static String description(DemoDevice device) {
        return device.model().maker() + " " + device.model().label() + " (invented)";
    }
}
