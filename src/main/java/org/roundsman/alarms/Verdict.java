package org.roundsman.alarms;

import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What was worked out about an active alarm; a later verdict replaces an earlier one as more becomes known.
 *
 * @param key of the alarm
 * @param cause what is behind it
 * @param causedBy the alarm that explains this one (RFC 8632: root-cause-resource); this one then notifies nobody. Empty for
 *     a cause of its own
 * @param evidence step by step, each a sentence with its times
 * @param impact who suffers from it
 * @param affected devices that suffer from it (RFC 8632: impacted-resource), without the resource itself
 * @param settled false while more may become known in the next moments, so that notifying waits
 */
public record Verdict(
        AlarmKey key,
        CauseKind cause,
        Optional<AlarmKey> causedBy,
        List<String> evidence,
        Impact impact,
        Set<Long> affected,
        boolean settled) {

    public Verdict {
        evidence = List.copyOf(evidence);
        affected = Set.copyOf(affected);
        if (causedBy.isPresent() && causedBy.get().equals(key)) {
            throw new IllegalArgumentException(key + " cannot be its own cause");
        }
    }
}
