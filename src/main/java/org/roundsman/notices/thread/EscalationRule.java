package org.roundsman.notices.thread;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.alarms.OperatorState;
import org.roundsman.alarms.Severity;

/** When a matter that nobody acknowledged goes to whom. Pure. */
public final class EscalationRule {

    private EscalationRule() {}

    /**
     * The chain that counts for an alarm.
     *
     * @param steps accounts of each step, at least one step; after the last it begins anew
     * @param serviceHours whether it rests while the site does not need its Wi-Fi
     */
    public record Chain(Severity severity, Duration pause, boolean serviceHours, List<Set<Long>> steps) {}

    /** Who is told next, and the thread after that. */
    public record Due(NoticeThread after, Set<Long> accounts) {}

    /**
     * Who is to be told now, if anybody.
     *
     * @param alarm active, and held back by nothing
     * @param needed whether the site needs its Wi-Fi now
     */
    public static Optional<Due> decide(NoticeThread thread, OpenAlarm alarm, Chain chain, boolean needed, Instant now) {
        boolean open =
                alarm.operator() == OperatorState.NONE && alarm.severity().atLeast(chain.severity());
        if (!open || thread.toldAt().isEmpty() || chain.steps().isEmpty() || chain.serviceHours() && !needed) {
            return Optional.empty();
        }
        Instant last = thread.escalatedAt().orElse(thread.toldAt().get());
        if (now.isBefore(last.plus(chain.pause()))) {
            return Optional.empty();
        }
        Set<Long> next = chain.steps().get(thread.escalations() % chain.steps().size());
        return Optional.of(new Due(thread.escalated(now), next));
    }
}
