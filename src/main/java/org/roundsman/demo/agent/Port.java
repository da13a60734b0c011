package org.roundsman.demo.agent;

import java.util.ArrayList;
import java.util.List;
import org.roundsman.demo.DemoDevice;
import org.roundsman.demo.DemoModel;

/**
 * One row of the interface tables.
 *
 * @param number on the front plate, from 1; 0 for a radio
 * @param index ifIndex; on a switch not the number, as on many a switch that exists
 * @param type ifType: 6 ethernetCsmacd, 71 ieee80211
 * @param uplink whether the device's own traffic counters are this port's
 * @param perMille share of the uplink's traffic in thousandths, the other way round, for ports that are not the uplink
 * @param macOffset added to the device's base address
 */
record Port(int number, int index, String name, int type, boolean uplink, int perMille, int macOffset) {

    static final int ETHERNET = 6;
    static final int WIRELESS = 71;
    private static final int SWITCH_INDEX = 10_000;

    static List<Port> of(DemoDevice device) {
        return switch (device.kind()) {
            case ACCESS_POINT -> accessPoint(device);
            case NETWORK_SWITCH -> trunk("port ", DemoModel.SWITCH_PORTS, "uplink", SWITCH_INDEX);
            case GATEWAY -> trunk("lan ", DemoModel.GATEWAY_PORTS, "wan", 0);
        };
    }

    private static List<Port> accessPoint(DemoDevice device) {
        List<Port> ports = new ArrayList<>();
        ports.add(new Port(1, 1, "eth0", ETHERNET, true, 0, 0));
        int radios = device.radios().size();
        for (int i = 1; i <= radios; i++) {
            ports.add(new Port(0, 10 + i, "radio" + i, WIRELESS, false, 1000 / radios, i));
        }
        return ports;
    }

    /** The uplink comes last, as on many a front plate. */
    private static List<Port> trunk(String word, int count, String uplink, int indexBase) {
        List<Port> ports = new ArrayList<>();
        for (int i = 1; i <= count; i++) {
            ports.add(new Port(i, indexBase + i, word + i, ETHERNET, false, 0, 0));
        }
        ports.add(new Port(count + 1, indexBase + count + 1, uplink, ETHERNET, true, 0, 0));
        return ports;
    }

    /** The wired port of that number. */
    static Port numbered(DemoDevice device, int number) {
        return of(device).stream()
                .filter(port -> port.number() == number)
                .findFirst()
                .orElseThrow();
    }

    static int uplinkIndex(DemoDevice device) {
        return numbered(device, device.model().uplinkPort()).index();
    }
}
