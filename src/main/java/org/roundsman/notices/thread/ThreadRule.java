package org.roundsman.notices.thread;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.alarms.OperatorState;
import org.roundsman.alarms.Severity;

/** What is to be told of a thread now. Pure. */
public final class ThreadRule {

    private final Duration calmTime;
    private final Duration settleWait;

    public ThreadRule(Duration calmTime, Duration settleWait) {
        this.calmTime = calmTime;
        this.settleWait = settleWait;
    }

    /** What to do. */
    public sealed interface Step {
        /** Nothing yet; the reason is for people. */
        record Wait(String why) implements Step {}

        /** Tell whoever wants to know, and was not told yet. */
        record Tell(NoticeThread after) implements Step {}

        /** Tell that it got worse, and whoever wants to know now for the first time. */
        record Worse(NoticeThread after, Severity severity) implements Step {}

        /** Tell those who were told that it is over; nothing where nobody was. */
        record End(NoticeThread after, boolean told) implements Step {}
    }

    /**
     * The step.
     *
     * @param alarm as it is now; empty where it is not active
     */
    public Step decide(NoticeThread thread, Optional<OpenAlarm> alarm, Instant now) {
        if (thread.clearedAt().isPresent()) {
            boolean calm = !now.isBefore(thread.clearedAt().get().plus(calmTime));
            return calm
                    ? new Step.End(thread.ended(), thread.toldAt().isPresent())
                    : new Step.Wait("cleared; it may come back");
        }
        if (alarm.isEmpty()) {
            return new Step.Wait("not active now");
        }
        Optional<String> held = held(alarm.get(), now);
        if (held.isPresent()) {
            return new Step.Wait(held.get());
        }
        Severity severity = alarm.get().severity();
        if (thread.toldAt().isEmpty()) {
            return new Step.Tell(thread.told(now, severity));
        }
        boolean worse = severity.compareTo(thread.toldSeverity().orElseThrow()) > 0;
        return worse ? new Step.Worse(thread.told(now, severity), severity) : new Step.Tell(thread);
    }

    private Optional<String> held(OpenAlarm alarm, Instant now) {
        if (alarm.causedBy().isPresent()) {
            return Optional.of("another alarm explains it");
        }
        if (alarm.planned()) {
            return Optional.of("planned work");
        }
        if (alarm.operator() == OperatorState.SHELVED) {
            return Optional.of("shelved");
        }
        if (alarm.operator() == OperatorState.CLOSED) {
            return Optional.of("closed by a person");
        }
        boolean settled = alarm.settled() || !now.isBefore(alarm.raised().plus(settleWait));
        return settled ? Optional.empty() : Optional.of("the cause is being worked out");
    }
}
