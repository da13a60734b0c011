package org.roundsman.demo;

import java.util.Map;

/** Port: puts the invented fleet among what people edit. Sowing again must add nothing and keep people's changes. */
@FunctionalInterface
public interface FleetSeed {

    /**
     * Stores models, customers, credentials, sites and devices, where they are not there yet.
     *
     * @return the stored id of each device, by its number in the fleet; without those that people have removed
     */
    Map<Integer, Long> sow(DemoFleet fleet);
}
