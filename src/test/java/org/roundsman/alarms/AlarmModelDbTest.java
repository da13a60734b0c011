package org.roundsman.alarms;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.constraints.IntRange;
import org.roundsman.alarms.life.Happening;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.InputRejected;

/** Random signals of several alarms, in batches of random sizes and with deeds between, and what the database has of them. */
class AlarmModelDbTest {

    private static final CustomerScope ALL = CustomerScope.everyone();
    private static DeskFixture f;

    private static DeskFixture fixture() {
        if (f == null) {
            f = new DeskFixture("alarm_model");
        }
        return f;
    }

    @Provide
    Arbitrary<List<Happening>> sequences() {
        return Happening.any(3).list().ofMinSize(5).ofMaxSize(60);
    }

    /** What the signals and deeds of one alarm should have left. */
    private static final class Expected {
        private final List<Optional<Severity>> changes = new ArrayList<>();
        private final List<AlarmAct.Kind> acts = new ArrayList<>();
        private Optional<Severity> active = Optional.empty();
        private int raises;

        void take(Happening happening) {
            Optional<Severity> next = Optional.ofNullable(happening.severity());
            if (!next.equals(active)) {
                changes.add(0, next);
                raises += active.isEmpty() ? 1 : 0;
            }
            active = next;
        }
    }

    @Property(tries = 40, shrinking = ShrinkingMode.OFF)
    void nothingIsLostAndNothingIsMadeUp(
            @ForAll("sequences") List<Happening> sequence, @ForAll @IntRange(min = 1, max = 12) int batchSize) {
        List<AlarmKey> keys = List.of(key("a"), key("b"), key("c"));
        Map<AlarmKey, Expected> expected = new HashMap<>();
        keys.forEach(key -> expected.put(key, new Expected()));
        List<Signal> waiting = new ArrayList<>();
        Instant now = DeskFixture.NOON;
        for (Happening happening : sequence) {
            now = now.plusSeconds(happening.pause());
            fixture().clock.set(now);
            AlarmKey key = keys.get(happening.alarm());
            if (happening.isAct() || waiting.size() >= batchSize) {
                fixture().desk.accept(waiting);
                waiting.clear();
            }
            if (happening.isAct()) {
                act(key, happening.act(), expected.get(key));
            } else {
                waiting.add(
                        happening.isClear()
                                ? new Signal.Clear(key, now, "over")
                                : new Signal.Raise(key, happening.severity(), now, now, "seen"));
                expected.get(key).take(happening);
            }
        }
        fixture().desk.accept(waiting);
        keys.forEach(key -> check(key, expected.get(key)));
        assertThat(fixture().book.changesAfter(0, 1_000_000))
                .extracting(AlarmChange::id)
                .isSorted();
    }

    private static AlarmKey key(String name) {
        int number = fixture().fleet.rows("select id from device").size();
        return DeskFixture.silent(fixture().accessPoint("ap-" + name + "-" + number));
    }

    private static Optional<OpenAlarm> stored(AlarmKey key) {
        return fixture()
                .fleet
                .ids(
                        "select id from alarm where resource_id = ?",
                        key.resource().id())
                .stream()
                .findFirst()
                .flatMap(id -> fixture().book.find(ALL, id));
    }

    private static void act(AlarmKey key, AlarmAct.Kind kind, Expected expected) {
        Optional<OpenAlarm> alarm = stored(key);
        if (alarm.isEmpty()) {
            return;
        }
        long id = alarm.get().id();
        AlarmDesk desk = fixture().desk;
        try {
            assertThat(
                            switch (kind) {
                                case ACK -> desk.acknowledge(ALL, id, "note");
                                case TAKE -> desk.take(ALL, id);
                                case RELEASE -> desk.release(ALL, id);
                                case NOTE -> desk.note(ALL, id, "note");
                                case SHELVE ->
                                    desk.shelve(
                                            ALL, id, fixture().clock.instant().plus(Duration.ofDays(1)), "why");
                                case UNSHELVE -> desk.unshelve(ALL, id);
                                case CLOSE -> desk.close(ALL, id, "note");
                                case REOPEN -> throw new IllegalArgumentException("nobody's deed");
                            })
                    .isTrue();
        } catch (InputRejected e) {
            assertThat(!alarm.get().active() || alarm.get().operator() == OperatorState.SHELVED)
                    .as("only what is over or on the shelf is refused")
                    .isTrue();
            assertThat(stored(key)).isEqualTo(alarm);
            return;
        }
        OpenAlarm after = stored(key).orElseThrow();
        assertThat(after.clearedAt()).isEqualTo(alarm.get().clearedAt());
        assertThat(after.severity()).isEqualTo(alarm.get().severity());
        boolean kept = kind == AlarmAct.Kind.NOTE
                || kind == AlarmAct.Kind.ACK
                || kind == AlarmAct.Kind.CLOSE
                || !after.equals(alarm.get());
        if (kept) {
            expected.acts.add(0, kind);
        }
    }

    private static void check(AlarmKey key, Expected expected) {
        Optional<OpenAlarm> alarm = stored(key);
        assertThat(alarm.filter(OpenAlarm::active).map(OpenAlarm::severity)).isEqualTo(expected.active);
        assertThat(alarm.isPresent()).isEqualTo(expected.raises > 0);
        alarm.map(OpenAlarm::id).ifPresent(id -> {
            assertThat(fixture().book.changes(ALL, id))
                    .extracting(AlarmChange::severity)
                    .isEqualTo(expected.changes);
            assertThat(fixture().book.episodes(ALL, id)).hasSize(expected.raises);
            assertThat(fixture().book.acts(ALL, id).stream()
                            .map(AlarmAct::kind)
                            .filter(k -> k != AlarmAct.Kind.REOPEN)
                            .toList())
                    .isEqualTo(expected.acts);
        });
    }
}
