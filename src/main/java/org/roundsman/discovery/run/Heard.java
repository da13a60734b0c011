package org.roundsman.discovery.run;

import java.time.Instant;
import java.util.List;
import java.util.OptionalDouble;
import org.roundsman.discovery.AddressRanges.Target;
import org.roundsman.measure.Facts;
import org.roundsman.measure.Outcome;

/**
 * What became of one address.
 *
 * @param outcome how the last visit ended that says most: answered, else refused, else silence or a closed port
 * @param credentialId which answered or was refused; null when nothing came back
 * @param uptimeSeconds since the device started, at that time
 * @param facts empty when it did not answer or fell silent while it was read
 */
public record Heard(
        Target target,
        Outcome outcome,
        Long credentialId,
        Instant at,
        OptionalDouble uptimeSeconds,
        List<String> profiles,
        Facts facts,
        String remark) {

    /** Whether something is there that speaks SNMP: it answered, or refused our credentials. */
    public boolean isFinding() {
        return outcome.kind() != Outcome.Kind.UNANSWERED;
    }
}
