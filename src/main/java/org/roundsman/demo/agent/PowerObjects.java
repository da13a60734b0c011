package org.roundsman.demo.agent;

import org.roundsman.demo.DemoModel;

/** POWER-ETHERNET-MIB (RFC 3621): the ports of a switch that can feed power, all in group 1, and the whole supply. */
final class PowerObjects {

    private static final String PORT = "1.3.6.1.2.1.105.1.1.1.";
    private static final String MAIN = "1.3.6.1.2.1.105.1.3.1.1.";
    private static final String GROUP = "1";
    private static final int TRUE = 1;
    private static final int FALSE = 2;
    private static final int SIGNAL_PAIRS = 1;
    private static final int LOW = 3;
    private static final int ON = 1;
    private static final int NOMINAL_WATTS = 370;
    private static final int THRESHOLD_PERCENT = 80;

    private PowerObjects() {}

    static void add(Shape.Builder shape) {
        for (int port = 1; port <= DemoModel.SWITCH_PORTS; port++) {
            addPort(shape, port);
        }
        shape.add(MAIN + 2, GROUP, (s, out) -> out.unsigned32(Tags.GAUGE32, NOMINAL_WATTS));
        shape.add(MAIN + 3, GROUP, (s, out) -> out.integer(Tags.INTEGER, ON));
        shape.add(
                MAIN + 4,
                GROUP,
                (s, out) -> out.unsigned32(Tags.GAUGE32, s.ports().watts()));
        shape.add(MAIN + 5, GROUP, (s, out) -> out.integer(Tags.INTEGER, THRESHOLD_PERCENT));
    }

    private static void addPort(Shape.Builder shape, int port) {
        String i = GROUP + "." + port;
        shape.add(PORT + 3, i, (s, out) -> out.integer(Tags.INTEGER, s.ports().feeds(port) ? TRUE : FALSE));
        shape.add(PORT + 4, i, (s, out) -> out.integer(Tags.INTEGER, FALSE));
        shape.add(PORT + 5, i, (s, out) -> out.integer(Tags.INTEGER, SIGNAL_PAIRS));
        shape.add(PORT + 6, i, (s, out) -> out.integer(Tags.INTEGER, s.ports().power(port)));
        shape.add(PORT + 7, i, (s, out) -> out.integer(Tags.INTEGER, LOW));
        shape.add(
                PORT + 8,
                i,
                (s, out) -> out.unsigned32(Tags.COUNTER32, s.ports().absent(port)));
        shape.add(PORT + 9, i, (s, out) -> SystemObjects.text(out, s.ports().alias(port)));
        // the value is the class and one more, and counts only while power is delivered
        shape.add(PORT + 10, i, (s, out) -> out.integer(Tags.INTEGER, s.ports().powerClass(port) + 1));
        for (int column = 11; column <= 14; column++) {
            shape.add(PORT + column, i, (s, out) -> out.unsigned32(Tags.COUNTER32, 0));
        }
    }
}
