package org.roundsman.discovery;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * One sweep of a site.
 *
 * @param ranges as entered when it began
 * @param ports UDP ports asked
 * @param credentials ids, in the order in which they are tried
 * @param total addresses, each once for each port
 * @param startedBy sign-in name
 * @param remark what was odd, or empty
 */
public record Sweep(
        long id,
        long siteId,
        SweepState state,
        String ranges,
        List<Integer> ports,
        List<Long> credentials,
        int total,
        String startedBy,
        Instant startedAt,
        Optional<Instant> endedAt,
        String remark) {

    public boolean isRunning() {
        return state == SweepState.RUNNING;
    }
}
