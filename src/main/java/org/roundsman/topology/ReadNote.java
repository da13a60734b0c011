package org.roundsman.topology;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.roundsman.measure.Outcome;

/**
 * How reading a device's wiring went.
 *
 * @param triedAt the last time that it was asked
 * @param outcome how that ended
 * @param readAt last full reading that was answered
 * @param stateAt last reading of port and power states
 * @param complete nothing was cut short in that full reading
 * @param lldp it offers LLDP's tables
 * @param bridge it offers a forwarding table
 * @param power it delivers power and says so
 * @param requests of that full reading
 * @param remarks what was odd in it
 */
public record ReadNote(
        Instant triedAt,
        Outcome outcome,
        Optional<Instant> readAt,
        Optional<Instant> stateAt,
        boolean complete,
        boolean lldp,
        boolean bridge,
        boolean power,
        int requests,
        List<String> remarks) {

    public ReadNote {
        remarks = List.copyOf(remarks);
    }
}
