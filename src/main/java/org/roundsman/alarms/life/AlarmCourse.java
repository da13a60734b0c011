package org.roundsman.alarms.life;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.roundsman.alarms.OperatorState;
import org.roundsman.alarms.Severity;
import org.roundsman.alarms.Signal;

/**
 * The state machine of an alarm: only signals raise, change and clear it (RFC 8632). Time never runs backwards in it: a signal
 * that says it is older than the last status change counts as of that change.
 */
public final class AlarmCourse {

    /** Texts with figures change at every round: they are brought up to date no more often than this. */
    public static final Duration TEXT_REST = Duration.ofSeconds(60);

    private AlarmCourse() {}

    /** What the signal makes of the alarm; empty stands for one that never was. */
    public static Step after(Optional<AlarmState> before, Signal signal) {
        boolean active = before.map(AlarmState::active).orElse(false);
        if (signal instanceof Signal.Raise raise) {
            return active ? raisedAgain(before.get(), raise) : began(before, raise);
        }
        return active ? ended(before.get(), (Signal.Clear) signal) : new Step(Step.Kind.NOTHING, before, false);
    }

    private static Step began(Optional<AlarmState> before, Signal.Raise raise) {
        Instant at = before.flatMap(AlarmState::cleared)
                .map(end -> later(raise.at(), end))
                .orElse(raise.at());
        Instant began = before.flatMap(AlarmState::cleared)
                .map(end -> later(raise.began(), end))
                .orElse(raise.began());
        Handling handling = before.map(AlarmState::handling)
                .filter(kept -> kept.state() == OperatorState.SHELVED)
                .orElse(Handling.NONE);
        Severity severity = raise.severity();
        return new Step(
                Step.Kind.BEGAN,
                Optional.of(new AlarmState(
                        began, at, at, Optional.empty(), severity, severity, raise.text(), at, "", handling)),
                false);
    }

    private static Step raisedAgain(AlarmState before, Signal.Raise raise) {
        if (raise.severity() == before.severity()) {
            boolean due = !raise.text().equals(before.text())
                    && !raise.at().isBefore(before.textAt().plus(TEXT_REST));
            return due
                    ? new Step(Step.Kind.TEXT, Optional.of(before.saying(raise.text(), raise.at())), false)
                    : new Step(Step.Kind.NOTHING, Optional.of(before), false);
        }
        Instant at = later(raise.at(), before.changed());
        boolean worse = !before.highest().atLeast(raise.severity());
        boolean reopened = worse && before.handling().state() == OperatorState.CLOSED;
        AlarmState after = new AlarmState(
                before.began(),
                before.raised(),
                at,
                Optional.empty(),
                raise.severity(),
                Severity.worst(before.highest(), raise.severity()),
                raise.text(),
                at,
                "",
                reopened ? before.handling().with(OperatorState.NONE, "", "") : before.handling());
        return new Step(Step.Kind.SEVERITY, Optional.of(after), reopened);
    }

    private static Step ended(AlarmState before, Signal.Clear clear) {
        Instant at = later(clear.at(), before.changed());
        AlarmState after = new AlarmState(
                before.began(),
                before.raised(),
                at,
                Optional.of(at),
                before.severity(),
                before.highest(),
                before.text(),
                before.textAt(),
                clear.text(),
                before.handling());
        return new Step(Step.Kind.ENDED, Optional.of(after), false);
    }

    private static Instant later(Instant a, Instant b) {
        return a.isAfter(b) ? a : b;
    }
}
