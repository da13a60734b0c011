package org.roundsman.topology;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * All that is known about the wiring of a site, as it is stored.
 *
 * @param ports of each device that was read, in the order of bridge ports
 * @param neighbours what each device hears by LLDP
 * @param supplies of power, by device
 * @param reads how reading each device went; a device that was never asked has no entry
 */
public record SiteWiring(
        SiteTree tree,
        Map<Long, List<Port>> ports,
        Map<Long, List<NeighbourSeen>> neighbours,
        Map<Long, List<Supply>> supplies,
        Map<Long, ReadNote> reads) {

    /** The port of a device by its number. */
    public Optional<Port> port(long deviceId, int number) {
        return ports.getOrDefault(deviceId, List.of()).stream()
                .filter(port -> port.number() == number)
                .findFirst();
    }
}
