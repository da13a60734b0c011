package org.roundsman.notices;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.ShrinkingMode;
import org.roundsman.alarms.OperatorState;
import org.roundsman.alarms.Severity;
import org.roundsman.notices.send.SendFailure;

/**
 * Random sequences of what happens to three alarms and to the service, its crashes included. Whatever happens: nobody is told
 * the same state twice but by a repeat under the same key, nobody is told an end without a beginning, nothing is told of what
 * is held back, and what stands in the end was told.
 */
class NoticeModelDbTest {

    private enum Deed {
        RAISE_MINOR,
        RAISE_MAJOR,
        CLEAR,
        EXPLAIN,
        EXPLAIN_NO_MORE,
        PLAN,
        PLAN_ENDS,
        ACKNOWLEDGE,
        SHELVE,
        UNSHELVE,
        RUN,
        A_MINUTE,
        EIGHT_MINUTES,
        RECEIVER_FAILS,
        RECEIVER_WORKS,
        DIES_AFTER_READING,
        DIES_AFTER_WRITING,
        DIES_BEFORE_SENDING,
        DIES_AFTER_SENDING
    }

    private record Step(Deed deed, int alarm) {}

    @Provide
    Arbitrary<List<Step>> steps() {
        Arbitrary<Step> step = net.jqwik.api.Combinators.combine(
                        Arbitraries.of(Deed.class), Arbitraries.integers().between(1, 3))
                .as(Step::new);
        return step.list().ofMinSize(5).ofMaxSize(32);
    }

    @Property(tries = 30, shrinking = ShrinkingMode.BOUNDED)
    void nothingIsToldTwiceAndWhatStandsIsTold(@ForAll("steps") List<Step> steps) {
        NoticeFixture f = NoticeFixture.shared("notice_model", TestConfig.most(500));
        Set<String> seen = new HashSet<>();
        f.person("wren");
        f.person("orrin", c -> Choose.from(c, Severity.MAJOR));
        for (Step step : steps) {
            Set<Long> held = held(f);
            take(f, step);
            requireNothingHeldWasBegun(f, seen, held);
        }
        settle(f);
        require(f);
    }

    private static void take(NoticeFixture f, Step step) {
        FakeAlarms.Alarm alarm = f.alarm(step.alarm());
        switch (step.deed()) {
            case RAISE_MINOR -> f.alarms.raise(alarm, Severity.MINOR, f.clock.instant());
            case RAISE_MAJOR -> f.alarms.raise(alarm, Severity.MAJOR, f.clock.instant());
            case CLEAR -> f.alarms.clear(alarm, f.clock.instant());
            case EXPLAIN -> alarm.causedBy = step.alarm() + 100;
            case EXPLAIN_NO_MORE -> alarm.causedBy = 0;
            case PLAN -> alarm.planned = true;
            case PLAN_ENDS -> alarm.planned = false;
            case ACKNOWLEDGE -> alarm.operator = OperatorState.ACK;
            case SHELVE -> alarm.operator = OperatorState.SHELVED;
            case UNSHELVE -> alarm.operator = OperatorState.NONE;
            default -> serve(f, step.deed());
        }
    }

    private static void serve(NoticeFixture f, Deed deed) {
        switch (deed) {
            case RUN -> f.run();
            case A_MINUTE -> f.minutes(1);
            case EIGHT_MINUTES -> f.minutes(8);
            case RECEIVER_FAILS -> f.receiver = m -> Optional.of(SendFailure.uncertain("no answer", null));
            case RECEIVER_WORKS -> f.receiver = m -> Optional.empty();
            case DIES_AFTER_READING -> new Telling(f.surroundings()).takeChanges();
            case DIES_AFTER_WRITING -> new Telling(f.surroundings()).run();
            case DIES_BEFORE_SENDING -> f.sending().claim(1);
            case DIES_AFTER_SENDING -> f.arrived.addAll(f.sending().claim(1));
            default -> throw new IllegalArgumentException(deed.name());
        }
    }

    private static Set<Long> held(NoticeFixture f) {
        Set<Long> held = new HashSet<>();
        for (long id = 1; id <= 3; id++) {
            FakeAlarms.Alarm alarm = f.alarm(id);
            if (alarm.causedBy != 0 || alarm.planned || alarm.operator == OperatorState.SHELVED) {
                held.add(id);
            }
        }
        return held;
    }

    /** Messages that were written before it was held back may still arrive; none is written while it is. */
    private static void requireNothingHeldWasBegun(NoticeFixture f, Set<String> seen, Set<Long> held) {
        List<String> written = f.texts("select o.id || ' ' || t.alarm_id from notice_outbox o"
                + " join notice_thread t on t.id = o.thread_id where o.kind in ('RAISE', 'UPDATE')");
        for (String one : written) {
            boolean begun = seen.add(one);
            assertThat(begun && held.contains(Long.valueOf(one.split(" ")[1])))
                    .as(one)
                    .isFalse();
        }
    }

    /** The receiver works, nothing is held back, time passes. */
    private static void settle(NoticeFixture f) {
        f.receiver = m -> Optional.empty();
        for (long id = 1; id <= 3; id++) {
            FakeAlarms.Alarm alarm = f.alarm(id);
            alarm.causedBy = 0;
            alarm.planned = false;
            alarm.operator = OperatorState.NONE;
        }
        for (int i = 0; i < 12; i++) {
            f.after(Duration.ofMinutes(11));
        }
    }

    private static void require(NoticeFixture f) {
        assertThat(f.outbox()).allMatch(line -> line.startsWith("SENT"));
        List<String> states = f.texts(
                "select thread_id || ' ' || state_key || ' ' || account_id || ' ' || channel from notice_outbox");
        assertThat(states).doesNotHaveDuplicates();
        Map<Long, UUID> keys = new HashMap<>();
        f.arrived.forEach(message -> assertThat(keys.computeIfAbsent(message.id(), id -> message.key()))
                .isEqualTo(message.key()));
        assertThat(new HashSet<>(keys.values())).hasSameSizeAs(keys.keySet());
        List<String> endsWithoutBeginning =
                f.texts("select id::text from notice_outbox c where kind = 'CLEAR' and not exists"
                        + " (select from notice_outbox r where r.thread_id = c.thread_id and r.kind = 'RAISE'"
                        + " and r.account_id = c.account_id and r.channel = c.channel and r.id < c.id)");
        assertThat(endsWithoutBeginning).isEmpty();
        requireStandingIsTold(f);
    }

    private static void requireStandingIsTold(NoticeFixture f) {
        List<Long> standing = new ArrayList<>();
        for (long id = 1; id <= 3; id++) {
            if (f.alarm(id).active()) {
                standing.add(id);
            }
        }
        List<String> told = f.texts(
                "select t.alarm_id::text from notice_outbox o join notice_thread t on t.id = o.thread_id join account"
                        + " a on a.id = o.account_id where a.name = 'wren' and o.kind = 'RAISE' and not t.over");
        assertThat(told)
                .containsExactlyInAnyOrderElementsOf(
                        standing.stream().map(String::valueOf).toList());
        assertThat(f.texts("select alarm_id::text from notice_thread where not over"))
                .containsExactlyInAnyOrderElementsOf(
                        standing.stream().map(String::valueOf).toList());
    }
}
