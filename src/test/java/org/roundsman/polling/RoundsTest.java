package org.roundsman.polling;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import io.micrometer.core.instrument.simple.SimpleMeterRegistry;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.roundsman.measure.Outcome;
import org.roundsman.measure.Reading;
import org.roundsman.measure.Subject;
import org.roundsman.measure.Values;
import org.roundsman.snmp.Agent;
import org.roundsman.snmp.DeviceMemory;
import org.roundsman.snmp.SnmpAccess;
import org.roundsman.snmp.Visit;
import org.roundsman.snmp.VisitKind;

class RoundsTest {

    /** The shortest interval that targets may have keeps this test short. */
    private static final Duration SECOND = Duration.ofSeconds(1);

    private final Queue<Reading> stored = new ConcurrentLinkedQueue<>();
    private final Queue<VisitKind> kinds = new ConcurrentLinkedQueue<>();
    private final Map<String, Outcome> outcomes = new ConcurrentHashMap<>();
    private final SimpleMeterRegistry registry = new SimpleMeterRegistry();
    private final Rounds rounds = rounds(this::answerAtOnce, 8, 100);

    private Rounds rounds(Rounds.Visitor visitor, int perSite, int inAll) {
        RoundsSettings settings = new RoundsSettings(perSite, inAll, Duration.ofMinutes(5));
        return new Rounds(visitor, stored::add, settings, Clock.systemUTC(), registry);
    }

    @AfterEach
    void close() {
        rounds.close();
    }

    @Test
    void everyDeviceIsVisitedOnItsIntervalAndStored() {
        rounds.watch(targets(20));
        await().untilAsserted(() -> IntStream.rangeClosed(1, 20)
                .forEach(id -> assertThat(readingsOf(id)).hasSizeGreaterThanOrEqualTo(3)));
        assertThat(kinds).containsOnly(VisitKind.ROUND);
        assertThat(stored).allSatisfy(r -> assertThat(r.nextInSeconds()).isEqualTo(1));
    }

    @Test
    void afterThreeUnansweredRoundsADeviceIsAskedWithOneSmallGetUntilItAnswers() {
        outcomes.put("192.0.2.1", Outcome.NO_REPLY);
        rounds.watch(targets(1));
        await().until(() -> kinds.contains(VisitKind.PROBE));
        assertThat(kinds.stream().filter(k -> k == VisitKind.ROUND)).hasSize(3);
        outcomes.put("192.0.2.1", Outcome.ANSWERED);
        int before = kinds.size();
        await().until(() -> kinds.size() >= before + 2);
        assertThat(kinds.stream().skip(before + 1)).contains(VisitKind.ROUND);
    }

    @Test
    void anUnansweredRoundBringsBackNothingButItsOutcome() {
        outcomes.put("192.0.2.1", Outcome.NO_REPLY);
        rounds.watch(targets(1));
        await().until(() -> !stored.isEmpty());
        Reading reading = stored.peek();
        assertThat(reading.outcome()).isEqualTo(Outcome.NO_REPLY);
        assertThat(reading.device()).isEqualTo(Values.none(Subject.DEVICE));
    }

    @Test
    void aSiteIsNeverAskedMoreAtATimeThanItsBound() {
        AtomicInteger inFlight = new AtomicInteger();
        AtomicInteger most = new AtomicInteger();
        Queue<Runnable> pending = new ConcurrentLinkedQueue<>();
        Rounds bounded = rounds(
                (memory, kind) -> {
                    most.accumulateAndGet(inFlight.incrementAndGet(), Math::max);
                    CompletableFuture<Visit> later = new CompletableFuture<>();
                    pending.add(() -> {
                        inFlight.decrementAndGet();
                        later.complete(visit(Outcome.ANSWERED));
                    });
                    return later;
                },
                3,
                100);
        bounded.watch(targets(30));
        await().until(() -> {
            Optional.ofNullable(pending.poll()).ifPresent(Runnable::run);
            return stored.size() >= 30;
        });
        bounded.close();
        assertThat(most.get()).isBetween(1, 3);
    }

    @Test
    void pollNowStoresAReadingAndReturnsTheVisit() throws Exception {
        rounds.watch(List.of(target(1, Duration.ofHours(1))));
        Visit visit = rounds.visitNow(1).orElseThrow().get();
        assertThat(visit.outcome()).isEqualTo(Outcome.ANSWERED);
        assertThat(kinds).containsExactly(VisitKind.TRACED);
        assertThat(stored).hasSize(1);
        assertThat(stored.peek().nextInSeconds()).isGreaterThanOrEqualTo(3600);
        assertThat(rounds.visitNow(2)).isEmpty();
    }

    @Test
    void manyWishesForARoundSoonAreServedByOneNowAndOneLater() {
        rounds.watch(List.of(target(1, Duration.ofHours(1))));
        for (int i = 0; i < 1_000; i++) {
            assertThat(rounds.soon(1, SECOND)).isTrue();
        }
        await().until(() -> !stored.isEmpty());
        rounds.soon(1, SECOND);
        await().until(() -> stored.size() >= 2);
        assertThat(kinds).hasSizeLessThanOrEqualTo(3).containsOnly(VisitKind.ROUND);
        assertThat(rounds.soon(99, SECOND)).isFalse();
    }

    /** Only the timetable decides that a device is silent; what refuses us is told. */
    @Test
    void aRoundSoonThatNobodyAnswersIsNotStored() {
        outcomes.put("192.0.2.1", Outcome.NO_REPLY);
        outcomes.put("192.0.2.2", Outcome.WRONG_DIGEST);
        rounds.watch(List.of(target(1, Duration.ofHours(1)), target(2, Duration.ofHours(1))));
        rounds.soon(1, SECOND);
        rounds.soon(2, SECOND);
        await().until(() -> kinds.size() == 2 && !stored.isEmpty());
        assertThat(readingsOf(1)).isEmpty();
        assertThat(readingsOf(2)).hasSize(1);
    }

    @Test
    void roundsSoonKeepTheBoundOfTheSite() {
        Queue<CompletableFuture<Visit>> open = new ConcurrentLinkedQueue<>();
        AtomicInteger begun = new AtomicInteger();
        Rounds bounded = rounds(
                (memory, kind) -> {
                    begun.incrementAndGet();
                    CompletableFuture<Visit> later = new CompletableFuture<>();
                    open.add(later);
                    return later;
                },
                3,
                100);
        bounded.watch(IntStream.rangeClosed(1, 20)
                .mapToObj(id -> target(id, Duration.ofHours(1)))
                .toList());
        IntStream.rangeClosed(1, 20).forEach(id -> bounded.soon(id, SECOND));
        await().until(() -> begun.get() == 3);
        await().until(() -> {
            assertThat(open.size()).isLessThanOrEqualTo(3);
            Optional.ofNullable(open.poll()).ifPresent(visit -> visit.complete(visit(Outcome.ANSWERED)));
            return stored.size() == 20;
        });
        bounded.close();
    }

    @Test
    void aRoundThatBreaksOffDoesNotEndTheRoundsOfItsDevice() {
        AtomicInteger calls = new AtomicInteger();
        Rounds fragile = rounds(
                (memory, kind) -> calls.incrementAndGet() == 1
                        ? CompletableFuture.failedFuture(new IllegalStateException("planted"))
                        : answerAtOnce(memory, kind),
                8,
                100);
        fragile.watch(targets(1));
        await().until(() -> !stored.isEmpty());
        fragile.close();
        assertThat(calls.get()).isGreaterThanOrEqualTo(2);
    }

    @Test
    void devicesTakenOutAreNotVisitedAndUnchangedOnesKeepTheirMemory() {
        Map<String, DeviceMemory> memories = new ConcurrentHashMap<>();
        Queue<Boolean> same = new ConcurrentLinkedQueue<>();
        Rounds watching = rounds(
                (memory, kind) -> {
                    DeviceMemory before = memories.put(memory.agent().host(), memory);
                    same.add(before == null || before == memory);
                    return answerAtOnce(memory, kind);
                },
                8,
                100);
        watching.watch(targets(2));
        await().until(() -> stored.size() >= 4);
        watching.watch(targets(1));
        assertThat(watching.devices()).isEqualTo(1);
        stored.clear();
        await().until(() -> stored.stream().filter(r -> r.deviceId() == 1).count() >= 2);
        watching.close();
        // One round of the device taken out may have been in flight when it left.
        assertThat(readingsOf(2)).hasSizeLessThanOrEqualTo(1);
        assertThat(same).containsOnly(true);
    }

    private CompletableFuture<Visit> answerAtOnce(DeviceMemory memory, VisitKind kind) {
        kinds.add(kind);
        return CompletableFuture.completedFuture(
                visit(outcomes.getOrDefault(memory.agent().host(), Outcome.ANSWERED)));
    }

    private List<Reading> readingsOf(long deviceId) {
        return stored.stream().filter(r -> r.deviceId() == deviceId).toList();
    }

    private static List<PollTarget> targets(int count) {
        return IntStream.rangeClosed(1, count)
                .mapToObj(id -> target(id, SECOND))
                .toList();
    }

    private static PollTarget target(long id, Duration interval) {
        return new PollTarget(id, 7, new Agent("192.0.2." + id, 161, new SnmpAccess.Community(2, "example")), interval);
    }

    private static Visit visit(Outcome outcome) {
        return new Visit(
                Instant.now(),
                outcome,
                Values.none(Subject.DEVICE),
                List.of(),
                List.of(),
                Optional.empty(),
                List.of(),
                false,
                1,
                0,
                List.of(),
                List.of());
    }
}
