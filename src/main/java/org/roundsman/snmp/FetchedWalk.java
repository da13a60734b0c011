package org.roundsman.snmp;

import java.time.Instant;
import java.util.List;
import org.roundsman.measure.Outcome;

/**
 * Everything that was read of an agent.
 *
 * @param at when the first request left
 * @param outcome how it ended; a walk may be there though a later request failed
 * @param complete whether the agent's end was reached
 */
public record FetchedWalk(Instant at, Outcome outcome, Walk walk, boolean complete, List<String> remarks) {

    public FetchedWalk {
        remarks = List.copyOf(remarks);
    }
}
