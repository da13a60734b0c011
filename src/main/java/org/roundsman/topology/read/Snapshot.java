package org.roundsman.topology.read;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.roundsman.topology.ChassisId;
import org.roundsman.topology.NeighbourSeen.Announced;
import org.roundsman.topology.Port;
import org.roundsman.topology.Supply;

/**
 * What one full reading of a device tells about wiring.
 *
 * @param systemName sysName, or what LLDP announces; may be empty
 * @param addresses MAC addresses that are its own
 * @param neighbours what it hears by LLDP
 * @param learnt where it learnt which address: by MAC the ports
 * @param whole which parts were read to their end
 */
public record Snapshot(
        Instant at,
        Optional<ChassisId> chassis,
        String systemName,
        Set<String> addresses,
        List<Port> ports,
        List<Heard> neighbours,
        Map<String, Set<Integer>> learnt,
        List<Supply> supplies,
        Whole whole,
        List<String> remarks) {

    /** A neighbour on a port, by {@link Port#number}. */
    public record Heard(int port, int localPort, String portBy, Announced announced) {}

    /** What was read to its end: what is missing in it is not there. */
    public record Whole(boolean ports, boolean neighbours, boolean learnt, boolean power, Offered offered) {

        public boolean all() {
            return ports && neighbours && learnt && power;
        }
    }

    /** What the device offers at all: LLDP, a forwarding table, power of its ports. */
    public record Offered(boolean lldp, boolean bridge, boolean power) {}
}
