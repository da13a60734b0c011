package org.roundsman.triage;

import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.CauseKind;

/**
 * What was found out about one alarm.
 *
 * @param key of the alarm; a finding means that the alarm is to be raised, if it is not
 * @param cause what is behind it; of an alarm that another explains: that one's
 * @param causedBy the alarm that explains this one; empty for a cause of its own
 * @param began start of the first unanswered round
 * @param evidence step by step, plain sentences with the site's times
 * @param affected devices that suffer, without the alarm's own
 * @param settled false while more may become known in the next moments
 * @param portsWanted devices that still answer, whose states of ports should be read now, since they would tell more
 */
public record Finding(
        AlarmKey key,
        CauseKind cause,
        Optional<AlarmKey> causedBy,
        Instant began,
        List<String> evidence,
        Set<Long> affected,
        Sureness sureness,
        boolean settled,
        Set<Long> portsWanted) {

    /** Ends the evidence of a port that was the cause and works again, while the device behind it does not answer yet. */
    public static final String WORKS_AGAIN = "The port works again since; an answer is still missing.";

    public Finding {
        evidence = List.copyOf(evidence);
        affected = Set.copyOf(affected);
        portsWanted = Set.copyOf(portsWanted);
        if (causedBy.isPresent() && causedBy.get().equals(key)) {
            throw new IllegalArgumentException(key + " cannot be its own cause");
        }
    }

    /** The alarms that a cause explains, among these findings. */
    public static Set<AlarmKey> pointingTo(AlarmKey cause, Collection<Finding> findings) {
        return findings.stream()
                .filter(finding -> finding.causedBy().filter(cause::equals).isPresent())
                .map(Finding::key)
                .collect(Collectors.toSet());
    }
}
