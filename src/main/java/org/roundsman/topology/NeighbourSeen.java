package org.roundsman.topology;

import java.time.Instant;
import java.util.List;

/**
 * A neighbour as a device hears it by LLDP: raw evidence.
 *
 * @param deviceId who hears it
 * @param port on which of its ports, by {@link Port#number}
 * @param portBy how LLDP's number of the port was found to be that port, in words
 * @param announced what the neighbour announces
 * @param missed complete readings since in which it was not there
 */
public record NeighbourSeen(
        long deviceId,
        int port,
        int localPort,
        String portBy,
        Announced announced,
        Instant firstSeen,
        Instant lastSeen,
        int missed) {

    /**
     * What one announces.
     *
     * @param chassisKind LldpChassisIdSubtype
     * @param portKind LldpPortIdSubtype
     * @param abilities octet of lldpRemSysCapEnabled, see {@link #able}
     * @param addresses management addresses
     */
    public record Announced(
            int chassisKind,
            byte[] chassisId,
            int portKind,
            byte[] portId,
            String portText,
            String systemName,
            String systemText,
            int abilities,
            List<String> addresses) {

        public Announced {
            addresses = List.copyOf(addresses);
        }

        public LldpId chassis() {
            return LldpId.chassis(chassisKind, chassisId);
        }

        public LldpId portOf() {
            return LldpId.port(portKind, portId);
        }

        /** Whether the ability of that number is switched on; number 0 is the most significant bit. */
        public boolean able(Ability ability) {
            return (abilities & 0x80 >> ability.ordinal()) != 0;
        }
    }

    /** LldpSystemCapabilitiesMap of LLDP-MIB, in the order of its numbers. */
    public enum Ability {
        OTHER,
        REPEATER,
        BRIDGE,
        WLAN_ACCESS_POINT,
        ROUTER,
        TELEPHONE,
        CABLE_DEVICE,
        STATION_ONLY
    }
}
