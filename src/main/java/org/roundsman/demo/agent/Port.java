package org.roundsman.demo.agent;

import java.util.ArrayList;
import java.util.List;
import org.roundsman.demo.DemoDevice;

/**
 * One row of the interface tables.
 *
 * @param index ifIndex
 * @param type ifType: 6 ethernetCsmacd, 71 ieee80211
 * @param uplink whether the device's own traffic counters are this port's
 * @param perMille share of the uplink's traffic in thousandths, the other way round, for ports that are not the uplink
 * @param macOffset added to the device's base address
 */
record Port(int index, String name, int type, boolean uplink, int perMille, int macOffset) {

    static final int ETHERNET = 6;
    static final int WIRELESS = 71;
    private static final int SWITCH_PORTS = 24;
    private static final int GATEWAY_PORTS = 3;

    static List<Port> of(DemoDevice device) {
        return switch (device.kind()) {
            case ACCESS_POINT -> accessPoint(device);
            case NETWORK_SWITCH -> trunk("port ", SWITCH_PORTS, "uplink");
            case GATEWAY -> trunk("lan ", GATEWAY_PORTS, "wan");
        };
    }

    private static List<Port> accessPoint(DemoDevice device) {
        List<Port> ports = new ArrayList<>();
        ports.add(new Port(1, "eth0", ETHERNET, true, 0, 0));
        int radios = device.radios().size();
        for (int i = 1; i <= radios; i++) {
            ports.add(new Port(10 + i, "radio" + i, WIRELESS, false, 1000 / radios, i));
        }
        return ports;
    }

    /** The uplink comes last, as on many a front plate; the other ports share its traffic. */
    private static List<Port> trunk(String word, int count, String uplink) {
        List<Port> ports = new ArrayList<>();
        int shares = count * (count + 1) / 2;
        for (int i = 1; i <= count; i++) {
            ports.add(new Port(i, word + i, ETHERNET, false, 1000 * i / shares, 0));
        }
        ports.add(new Port(count + 1, uplink, ETHERNET, true, 0, 0));
        return ports;
    }

    static int uplinkIndex(DemoDevice device) {
        return of(device).stream()
                .filter(Port::uplink)
                .findFirst()
                .orElseThrow()
                .index();
    }
}
