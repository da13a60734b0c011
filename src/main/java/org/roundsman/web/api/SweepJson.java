package org.roundsman.web.api;

import java.time.Instant;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.roundsman.discovery.Sweep;
import org.roundsman.discovery.SweepProgress;

/** A sweep, and how far it is. Every address is counted once for each port. */
@Schema(name = "Sweep")
record SweepJson(
        @Schema(examples = "12") long id,

        @Schema(description = "running, done or cancelled", examples = "running")
        String state,

        @Schema(description = "It waits for other sweeps to end", examples = "false")
        boolean waiting,

        @Schema(examples = "wren") String startedBy,
        @Schema(examples = "2026-03-04T09:31:07Z") Instant startedAt,
        @Schema(nullable = true) Instant endedAt,

        @Schema(description = "What was odd, or empty", examples = "")
        String remark,

        @Schema(description = "As entered when it began", examples = "192.0.2.0/28")
        String ranges,

        @Schema(examples = "[161]") List<Integer> ports,

        @Schema(description = "Ids, in the order in which they are tried", examples = "[5]")
        List<Long> credentials,

        @Schema(description = "Addresses to ask", examples = "14")
        int total,

        @Schema(description = "Addresses that are done, those left out included", examples = "9")
        int asked,

        @Schema(description = "They let us in", examples = "3")
        int answered,

        @Schema(description = "They speak SNMP and refused our credentials", examples = "1")
        int refused,

        @Schema(description = "Hosts with nothing at the port", examples = "2")
        int closed,

        @Schema(description = "Nothing came from them", examples = "3")
        int silent,

        @Schema(description = "They were set aside before", examples = "0")
        int leftOut) {

    static SweepJson of(SweepProgress progress) {
        Sweep sweep = progress.sweep();
        return new SweepJson(
                sweep.id(),
                Choice.word(sweep.state()),
                progress.waiting(),
                sweep.startedBy(),
                sweep.startedAt(),
                sweep.endedAt().orElse(null),
                sweep.remark(),
                sweep.ranges(),
                sweep.ports(),
                sweep.credentials(),
                sweep.total(),
                progress.asked(),
                progress.answered(),
                progress.refused(),
                progress.closed(),
                progress.silent(),
                progress.leftOut());
    }
}
