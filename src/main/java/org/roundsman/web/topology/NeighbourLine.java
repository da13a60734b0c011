package org.roundsman.web.topology;

import java.time.Instant;
import java.time.ZoneId;
import org.roundsman.topology.NeighbourSeen;
import org.roundsman.topology.Port;
import org.roundsman.web.page.Words;

/** A neighbour as it announces itself: the raw evidence. */
record NeighbourLine(
        String port,
        String portBy,
        String chassis,
        String portId,
        String system,
        String addresses,
        String first,
        String last,
        boolean missing) {

    static NeighbourLine of(NeighbourSeen seen, String portTitle, ZoneId zone, Instant now) {
        NeighbourSeen.Announced announced = seen.announced();
        return new NeighbourLine(
                portTitle.isEmpty() ? Port.title(seen.port(), "") : portTitle,
                seen.portBy(),
                announced.chassis().words(),
                announced.portOf().words() + (announced.portText().isEmpty() ? "" : ", “" + announced.portText() + "”"),
                announced.systemName(),
                String.join(", ", announced.addresses()),
                Words.moment(seen.firstSeen(), zone),
                Words.moment(seen.lastSeen(), zone) + " (" + Words.ago(seen.lastSeen(), now) + ")",
                seen.missed() > 0);
    }
}
