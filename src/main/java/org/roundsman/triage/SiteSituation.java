package org.roundsman.triage;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.roundsman.topology.SiteTree;

/**
 * All that finding the causes at one site needs. Immutable.
 *
 * @param zone the site's; times in evidence are in it
 * @param tree what hangs on what, with the ports as last read
 * @param devices every device of the site by its id; one of the tree that is missing here counts as unwatched
 * @param portsReadAt by device, when its states of ports and power were last read
 * @param ended causes at this site that were over a short while ago
 * @param fallen by device that is a cause: who went down with it, also when it has come back since
 */
public record SiteSituation(
        long siteId,
        ZoneId zone,
        SiteTree tree,
        Map<Long, DeviceLook> devices,
        Map<Long, Instant> portsReadAt,
        List<EndedCause> ended,
        Map<Long, Set<Long>> fallen,
        Instant now) {

    public SiteSituation {
        devices = Map.copyOf(devices);
        portsReadAt = Map.copyOf(portsReadAt);
        ended = List.copyOf(ended);
        fallen = Map.copyOf(fallen);
    }
}
