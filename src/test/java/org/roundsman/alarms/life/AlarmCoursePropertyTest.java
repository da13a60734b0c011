package org.roundsman.alarms.life;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.roundsman.alarms.AlarmAct;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.OperatorState;
import org.roundsman.alarms.Resource;
import org.roundsman.alarms.Severity;
import org.roundsman.alarms.Signal;
import org.roundsman.fleet.InputRejected;

/** Random sequences of signals and deeds against the plain sentences of RFC 8632, told without the state machine. */
class AlarmCoursePropertyTest {

    private static final AlarmKey KEY = AlarmKey.of(AlarmType.DEVICE_SILENT, Resource.device(7));

    @Provide
    Arbitrary<List<Happening>> sequences() {
        return Happening.any(1).list().ofMinSize(1).ofMaxSize(80);
    }

    /** What the sentences of the standard expect, from the signals alone. */
    private static final class Expected {
        private boolean active;
        private Optional<Severity> last = Optional.empty();
        private final List<Optional<Severity>> changes = new ArrayList<>();

        void raise(Severity severity) {
            if (!active || last.get() != severity) {
                changes.add(Optional.of(severity));
            }
            active = true;
            last = Optional.of(severity);
        }

        void clear() {
            if (active) {
                changes.add(Optional.empty());
            }
            active = false;
        }
    }

    @Property(tries = 2_000)
    void everySequenceKeepsTheSentencesOfTheStandard(@ForAll("sequences") List<Happening> sequence) {
        Run run = new Run();
        Instant now = Instant.parse("2026-11-25T12:00:00Z");
        for (Happening happening : sequence) {
            now = now.plusSeconds(happening.pause());
            if (happening.isAct()) {
                run.act(happening.act(), now);
            } else {
                run.signal(happening, now);
            }
            run.check();
        }
    }

    /** One alarm through one sequence. */
    private static final class Run {
        private Optional<AlarmState> state = Optional.empty();
        private final List<Optional<Severity>> changes = new ArrayList<>();
        private final List<Instant> times = new ArrayList<>();
        private final Expected expected = new Expected();

        void act(AlarmAct.Kind kind, Instant now) {
            if (state.isEmpty()) {
                return;
            }
            AlarmState before = state.get();
            Deed deed = kind == AlarmAct.Kind.SHELVE
                    ? Deed.shelve(now.plusSeconds(60), "because")
                    : Deed.of(kind, kind == AlarmAct.Kind.NOTE ? "noted" : "");
            try {
                state = Optional.of(before.with(HandlingRules.after(before.handling(), deed, "wren", now)));
            } catch (InputRejected e) {
                assertThat(before.handling().state()).isEqualTo(OperatorState.SHELVED);
                assertThat(kind).isIn(AlarmAct.Kind.ACK, AlarmAct.Kind.TAKE, AlarmAct.Kind.CLOSE);
            }
        }

        void signal(Happening happening, Instant now) {
            Signal signal = happening.isClear()
                    ? new Signal.Clear(KEY, now, "over")
                    : new Signal.Raise(KEY, happening.severity(), now.minusSeconds(10), now, "seen at " + now);
            Optional<AlarmState> before = state;
            Step step = AlarmCourse.after(before, signal);
            state = step.state();
            if (step.statusChange()) {
                changes.add(step.changedTo());
                times.add(state.orElseThrow().changed());
            }
            if (happening.isClear()) {
                expected.clear();
            } else {
                expected.raise(happening.severity());
            }
            checkHandling(before, step);
        }

        private static void checkHandling(Optional<AlarmState> before, Step step) {
            if (before.isEmpty() || step.state().isEmpty()) {
                return;
            }
            Handling was = before.get().handling();
            Handling is = step.state().get().handling();
            if (step.kind() == Step.Kind.BEGAN && was.state() != OperatorState.SHELVED) {
                assertThat(is).isEqualTo(Handling.NONE);
            } else if (step.reopened()) {
                assertThat(was.state()).isEqualTo(OperatorState.CLOSED);
                assertThat(step.state().get().severity())
                        .isGreaterThan(before.get().highest());
            } else {
                assertThat(is).isEqualTo(was);
            }
        }

        void check() {
            assertThat(state.map(AlarmState::active).orElse(false)).isEqualTo(expected.active);
            assertThat(changes).isEqualTo(expected.changes);
            assertThat(times).isSorted();
            state.ifPresent(alarm -> {
                assertThat(alarm.severity()).isEqualTo(expected.last.get());
                assertThat(alarm.highest()).isGreaterThanOrEqualTo(alarm.severity());
                assertThat(alarm.began()).isBeforeOrEqualTo(alarm.raised());
                assertThat(alarm.raised()).isBeforeOrEqualTo(alarm.changed());
                alarm.cleared().ifPresent(end -> assertThat(end).isEqualTo(alarm.changed()));
            });
        }
    }
}
