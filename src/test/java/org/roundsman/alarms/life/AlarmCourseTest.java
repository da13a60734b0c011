package org.roundsman.alarms.life;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.roundsman.alarms.AlarmAct;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.OperatorState;
import org.roundsman.alarms.Resource;
import org.roundsman.alarms.Severity;
import org.roundsman.alarms.Signal;
import org.roundsman.fleet.InputRejected;

/** The state machine, step by step, against what RFC 8632 (module ietf-alarms) says of raise, clear and operator states. */
class AlarmCourseTest {

    private static final Instant NOON = Instant.parse("2026-11-25T12:00:00Z");
    private static final AlarmKey KEY = AlarmKey.of(AlarmType.DEVICE_SILENT, Resource.device(7));

    private final List<Optional<Severity>> history = new ArrayList<>();
    private Optional<AlarmState> state = Optional.empty();

    private Step raise(Severity severity, int seconds) {
        Instant at = NOON.plusSeconds(seconds);
        return take(new Signal.Raise(KEY, severity, at, at, severity.word()));
    }

    private Step clear(int seconds) {
        return take(new Signal.Clear(KEY, NOON.plusSeconds(seconds), "over"));
    }

    private Step take(Signal signal) {
        Step step = AlarmCourse.after(state, signal);
        state = step.state();
        if (step.statusChange()) {
            history.add(step.changedTo());
        }
        return step;
    }

    private void does(AlarmAct.Kind kind) {
        does(Deed.of(kind, "a note"));
    }

    private void does(Deed deed) {
        Handling after = HandlingRules.after(now().handling(), deed, "wren", NOON);
        state = Optional.of(now().with(after));
    }

    private AlarmState now() {
        return state.orElseThrow();
    }

    @Test
    void raiseMinorThenMajorIsOneAlarmWithTwoEntries() {
        raise(Severity.MINOR, 0);
        raise(Severity.MAJOR, 60);
        assertThat(now().severity()).isEqualTo(Severity.MAJOR);
        assertThat(now().highest()).isEqualTo(Severity.MAJOR);
        assertThat(history).containsExactly(Optional.of(Severity.MINOR), Optional.of(Severity.MAJOR));
    }

    @Test
    void raiseAckClearKeepsStateAndSeverity() {
        raise(Severity.MAJOR, 0);
        does(AlarmAct.Kind.ACK);
        clear(60);
        assertThat(now().active()).isFalse();
        assertThat(now().handling().state()).isEqualTo(OperatorState.ACK);
        assertThat(now().severity()).isEqualTo(Severity.MAJOR);
    }

    @Test
    void raiseClearRaiseHasThreeEntriesAndTheSecondTime() {
        raise(Severity.MAJOR, 0);
        clear(60);
        raise(Severity.MAJOR, 120);
        assertThat(now().active()).isTrue();
        assertThat(now().raised()).isEqualTo(NOON.plusSeconds(120));
        assertThat(history).hasSize(3);
    }

    @Test
    void closedWhileNotClearedIsStillActive() {
        raise(Severity.MAJOR, 0);
        does(AlarmAct.Kind.CLOSE);
        assertThat(now().handling().state()).isEqualTo(OperatorState.CLOSED);
        assertThat(now().active()).isTrue();
    }

    /** This project's own choice, not from the standard. */
    @Test
    void aClearOfAnUnknownKeyIsIgnored() {
        assertThat(clear(0).kind()).isEqualTo(Step.Kind.NOTHING);
        assertThat(state).isEmpty();
    }

    /** The 32 entries of the standard are a default for equipment with little memory; here nothing is dropped. */
    @Test
    void thirtyThreeChangesAreAllKept() {
        IntStream.range(0, 33).forEach(n -> raise(n % 2 == 0 ? Severity.MINOR : Severity.MAJOR, n));
        assertThat(history).hasSize(33);
        assertThat(history.get(0)).contains(Severity.MINOR);
    }

    @Test
    void theSameSeverityIsNoChangeAndItsTextIsRefreshedNowAndThen() {
        raise(Severity.MAJOR, 0);
        assertThat(raise(Severity.MAJOR, 100).kind()).isEqualTo(Step.Kind.NOTHING);
        Signal other = new Signal.Raise(KEY, Severity.MAJOR, NOON, NOON.plusSeconds(59), "other words");
        assertThat(take(other).kind()).isEqualTo(Step.Kind.NOTHING);
        Signal later = new Signal.Raise(KEY, Severity.MAJOR, NOON, NOON.plusSeconds(60), "other words");
        assertThat(take(later).kind()).isEqualTo(Step.Kind.TEXT);
        assertThat(now().text()).isEqualTo("other words");
        assertThat(history).hasSize(1);
    }

    @Test
    void timeNeverRunsBackwards() {
        raise(Severity.MAJOR, 100);
        clear(40);
        assertThat(now().cleared()).contains(NOON.plusSeconds(100));
        raise(Severity.MAJOR, 50);
        assertThat(now().raised()).isEqualTo(NOON.plusSeconds(100));
        assertThat(now().began()).isEqualTo(NOON.plusSeconds(100));
    }

    @Test
    void takingAcknowledgesAndGivingBackUndoesIt() {
        raise(Severity.MAJOR, 0);
        does(Deed.of(AlarmAct.Kind.TAKE, ""));
        assertThat(now().handling().state()).isEqualTo(OperatorState.ACK);
        assertThat(now().handling().takenBy()).isEqualTo("wren");
        does(Deed.of(AlarmAct.Kind.RELEASE, ""));
        assertThat(now().handling().state()).isEqualTo(OperatorState.NONE);
        assertThat(now().handling().takenBy()).isEmpty();
    }

    @Test
    void aShelfNeedsAReasonAndATimeThatDoes() {
        raise(Severity.MAJOR, 0);
        refused(Deed.shelve(NOON.plusSeconds(1), " "), "reason");
        refused(Deed.shelve(NOON, "why"), "until");
        refused(Deed.shelve(NOON.plus(Duration.ofDays(91)), "why"), "until");
        refused(Deed.of(AlarmAct.Kind.NOTE, " "), "text");
        does(Deed.shelve(NOON.plus(Duration.ofDays(90)), "why"));
        refused(Deed.of(AlarmAct.Kind.ACK, ""), "state");
        does(Deed.of(AlarmAct.Kind.UNSHELVE, ""));
        assertThat(now().handling().state()).isEqualTo(OperatorState.NONE);
    }

    private void refused(Deed deed, String field) {
        assertThatThrownBy(() -> does(deed)).isInstanceOfSatisfying(InputRejected.class, e -> assertThat(e.faults())
                .containsOnlyKeys(field));
    }
}
