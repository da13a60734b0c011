package org.roundsman.topology;

import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;

/**
 * One port of a switch or gateway.
 *
 * @param number ifIndex; negative where only the number is known by which LLDP calls it
 * @param name ifName, or empty
 * @param description ifDescr, or empty
 * @param alias ifAlias, which people enter on the device, or empty
 * @param mac in the form 00:00:5e:00:53:01, or empty
 * @param kind ifType (6 = Ethernet), 0 where not known
 * @param bridgePort dot1dBasePort, empty where it is not bridged
 * @param speedMbit millions of bits per second, empty where not known or 0
 * @param macs addresses learnt on it at the last full reading
 * @param power empty where it delivers none, or is not known to
 * @param present it was there at the last full reading
 */
public record Port(
        int number,
        String name,
        String description,
        String alias,
        String mac,
        int kind,
        OptionalInt bridgePort,
        OptionalLong speedMbit,
        PortState state,
        int macs,
        Optional<Power> power,
        boolean present) {

    /** ifType of Ethernet-like interfaces (IANAifType-MIB). */
    public static final int ETHERNET = 6;

    /** What a person calls it: {@code port 7}, {@code port ge-0/0/7}. */
    public String title() {
        return title(number, name.isEmpty() ? description : name);
    }

    /** As {@link #title()}, of a port known by its number and name only. */
    public static String title(int number, String name) {
        if (name.isEmpty()) {
            return "port " + Math.abs(number);
        }
        return name.toLowerCase(java.util.Locale.ROOT).contains("port") ? name : "port " + name;
    }
}
