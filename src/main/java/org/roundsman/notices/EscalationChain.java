package org.roundsman.notices;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.roundsman.alarms.Severity;

/**
 * Who is told next while nobody acknowledges an alarm.
 *
 * @param id 0 while not stored
 * @param customerId empty for all customers that have no chain of their own
 * @param severity from this one
 * @param minutes from one step to the next, 1 to 1440
 * @param serviceHours whether it rests while the site does not need its Wi-Fi
 * @param steps accounts of each; after the last it begins anew
 */
public record EscalationChain(
        long id,
        Optional<Long> customerId,
        Severity severity,
        int minutes,
        boolean serviceHours,
        List<Set<Long>> steps) {

    public EscalationChain {
        steps = steps.stream().map(Set::copyOf).toList();
    }
}
