package org.roundsman.snmp;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.roundsman.measure.Facts;
import org.roundsman.measure.NetworkReading;
import org.roundsman.measure.Outcome;
import org.roundsman.measure.RadioReading;
import org.roundsman.measure.Values;

/**
 * What one visit to an agent brought back.
 *
 * @param at when its first request left
 * @param outcome how it ended; figures may still be there when a later request of the visit failed
 * @param facts present when the slow facts were read
 * @param profiles names of the profiles in use
 * @param restarted the device restarted since the visit before
 * @param requests requests sent, retries included
 * @param timeouts requests that got no reply
 * @param raw every variable received, for TRACED visits only
 * @param remarks what was odd, in plain words: a table that does not end, a value out of range
 */
public record Visit(
        Instant at,
        Outcome outcome,
        Values device,
        List<RadioReading> radios,
        List<NetworkReading> networks,
        Optional<Facts> facts,
        List<String> profiles,
        boolean restarted,
        int requests,
        int timeouts,
        List<RawAnswer> raw,
        List<String> remarks) {

    public Visit {
        radios = List.copyOf(radios);
        networks = List.copyOf(networks);
        profiles = List.copyOf(profiles);
        raw = List.copyOf(raw);
        remarks = List.copyOf(remarks);
    }
}
