package org.roundsman.snmp;

import java.util.List;
import java.util.Optional;
import org.roundsman.snmp.plan.OfflineVisit;

/** Reads stored walks exactly as a device is read over the network: by the very same visit. */
public final class WalkVisit {

    private WalkVisit() {}

    /**
     * What profiles make of a walk, and why.
     *
     * @param later a second walk of the same device: counters then become rates
     */
    public static WalkReading read(Snapshot walk, Optional<Snapshot> later, ProfileSet profiles) {
        return new OfflineVisit(profiles.all()).read(walk, later);
    }

    /** Every table and group of scalars that a walk holds, whatever profiles say. */
    public static List<UnusedGroup> groups(Walk walk) {
        return OfflineVisit.groups(walk);
    }
}
