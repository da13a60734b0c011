package org.roundsman.demo.agent;

import org.roundsman.demo.DemoDevice;
import org.roundsman.fleet.DeviceKind;

/** SNMPv2-MIB system group (RFC 3418), SNMP-FRAMEWORK-MIB engine (RFC 3411), ENTITY-MIB chassis (RFC 6933). */
final class SystemObjects {

    private static final String SYSTEM = "1.3.6.1.2.1.1.";
    private static final String ENGINE = "1.3.6.1.6.3.10.2.1.";
    private static final String ENTITY = "1.3.6.1.2.1.47.1.1.1.1.";
    private static final int CHASSIS = 3;
    private static final int TRUE = 1;

    private SystemObjects() {}

    static void add(Shape.Builder shape) {
        addSystem(shape);
        addEngine(shape);
        addChassis(shape);
    }

    private static void addSystem(Shape.Builder shape) {
        shape.add(SYSTEM + 1, "0", (s, out) -> text(out, description(s)));
        shape.add(SYSTEM + 2, "0", (s, out) -> objectId(out, s.device.model().objectId()));
        shape.add(SYSTEM + 3, "0", (s, out) -> out.unsigned32(Tags.TIME_TICKS, s.upMillis() / 10));
        shape.add(SYSTEM + 4, "0", (s, out) -> text(out, "desk@fernhollow.example"));
        shape.add(SYSTEM + 5, "0", (s, out) -> text(out, s.device.fullName()));
        shape.add(SYSTEM + 6, "0", (s, out) -> text(out, s.location));
        shape.add(SYSTEM + 7, "0", (s, out) -> out.integer(Tags.INTEGER, services(s.device)));
    }

    private static String description(AgentState state) {
        return state.device.model().maker() + " " + state.device.model().label() + ", firmware "
                + MakerObjects.firmware(state) + " (invented)";
    }

    /** Sum of 2^(layer - 1): a switch works on layer 2, a gateway on 3, and both end in applications. */
    private static int services(DemoDevice device) {
        return device.kind() == DeviceKind.GATEWAY ? 78 : 74;
    }

    private static void addEngine(Shape.Builder shape) {
        shape.add(ENGINE + 1, "0", (s, out) -> out.string(Tags.OCTET_STRING, s.usm.engineId()));
        shape.add(ENGINE + 2, "0", (s, out) -> out.integer(Tags.INTEGER, s.engineBoots()));
        shape.add(ENGINE + 3, "0", (s, out) -> out.integer(Tags.INTEGER, s.engineTime()));
        shape.add(ENGINE + 4, "0", (s, out) -> out.integer(Tags.INTEGER, Limits.MESSAGE_OCTETS));
    }

    private static void addChassis(Shape.Builder shape) {
        shape.add(ENTITY + 2, "1", (s, out) -> text(out, s.device.model().label() + " chassis"));
        shape.add(ENTITY + 3, "1", (s, out) -> objectId(out, s.device.model().objectId()));
        shape.add(ENTITY + 4, "1", (s, out) -> out.integer(Tags.INTEGER, 0));
        shape.add(ENTITY + 5, "1", (s, out) -> out.integer(Tags.INTEGER, CHASSIS));
        shape.add(ENTITY + 6, "1", (s, out) -> out.integer(Tags.INTEGER, -1));
        shape.add(ENTITY + 7, "1", (s, out) -> text(out, s.device.name()));
        shape.add(ENTITY + 8, "1", (s, out) -> text(out, MakerObjects.HARDWARE_REVISION));
        shape.add(ENTITY + 9, "1", (s, out) -> text(out, MakerObjects.firmware(s)));
        shape.add(ENTITY + 10, "1", (s, out) -> text(out, MakerObjects.firmware(s)));
        shape.add(ENTITY + 11, "1", (s, out) -> text(out, s.serial()));
        shape.add(ENTITY + 12, "1", (s, out) -> text(out, s.device.model().maker()));
        shape.add(ENTITY + 13, "1", (s, out) -> text(out, s.device.model().label()));
        shape.add(ENTITY + 16, "1", (s, out) -> out.integer(Tags.INTEGER, TRUE));
    }

    static void text(BerWriter out, String value) {
        out.string(Tags.OCTET_STRING, AgentState.text(value));
    }

    static void objectId(BerWriter out, String dotted) {
        byte[] encoded = Names.encoded(dotted);
        out.bytes(encoded, 0, encoded.length);
    }
}
