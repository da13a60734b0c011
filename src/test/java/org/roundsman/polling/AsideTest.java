package org.roundsman.polling;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import io.micrometer.core.instrument.simple.SimpleMeterRegistry;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicReference;
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

/** What is asked beside the rounds does not disturb them. */
class AsideTest {

    private final Queue<Reading> stored = new ConcurrentLinkedQueue<>();
    private final Queue<DeviceMemory> memories = new ConcurrentLinkedQueue<>();
    private volatile Outcome outcome = Outcome.ANSWERED;
    private volatile boolean restarted;
    private final Rounds rounds = new Rounds(
            (memory, kind) -> {
                memories.add(memory);
                return CompletableFuture.completedFuture(visit());
            },
            stored::add,
            new RoundsSettings(2, 10, Duration.ofMinutes(5)),
            Clock.systemUTC(),
            new SimpleMeterRegistry());

    @AfterEach
    void close() {
        rounds.close();
    }

    private Visit visit() {
        return new Visit(
                Instant.now(),
                outcome,
                Values.none(Subject.DEVICE),
                List.of(),
                List.of(),
                Optional.empty(),
                List.of(),
                restarted,
                1,
                0,
                List.of(),
                List.of());
    }

    private static PollTarget target(long id) {
        Agent agent = new Agent("192.0.2." + id, 161, new SnmpAccess.Community(2, "example"));
        return new PollTarget(id, 7, agent, Duration.ofSeconds(1));
    }

    @Test
    void roundsGoOnWhileAnErrandTakesItsTimeAndItHasAMemoryOfItsOwn() {
        rounds.watch(List.of(target(1)));
        AtomicReference<DeviceMemory> own = new AtomicReference<>();
        CompletableFuture<String> slow = new CompletableFuture<>();
        CompletableFuture<String> result = rounds.aside(1, memory -> {
                    own.set(memory);
                    return slow;
                })
                .orElseThrow();
        await().until(() -> stored.size() >= 3);
        assertThat(result).isNotDone();
        assertThat(memories).doesNotContain(own.get());
        assertThat(own.get().agent()).isEqualTo(target(1).agent());
        slow.complete("read");
        assertThat(result).isCompletedWithValue("read");
    }

    @Test
    void errandsOfOneDeviceComeOneAfterTheOther() {
        rounds.watch(List.of(target(1)));
        CompletableFuture<String> first = new CompletableFuture<>();
        CompletableFuture<String> one = rounds.aside(1, memory -> first).orElseThrow();
        CompletableFuture<String> two = rounds.aside(1, memory -> CompletableFuture.completedFuture("second"))
                .orElseThrow();
        assertThat(two).isNotDone();
        first.complete("first");
        assertThat(one).isCompletedWithValue("first");
        assertThat(two).isCompletedWithValue("second");
    }

    /** Two places at this site: two errands take both, the third waits. */
    @Test
    void errandsCountWithinTheBoundOfTheirSite() {
        rounds.watch(List.of(target(1), target(2), target(3)));
        CompletableFuture<String> first = new CompletableFuture<>();
        rounds.aside(1, memory -> first).orElseThrow();
        CompletableFuture<String> second = new CompletableFuture<>();
        rounds.aside(2, memory -> second).orElseThrow();
        CompletableFuture<String> third = rounds.aside(3, memory -> CompletableFuture.completedFuture("third"))
                .orElseThrow();
        assertThat(third).isNotDone();
        first.complete("");
        await().until(third::isDone);
        second.complete("");
    }

    @Test
    void aSilentDeviceIsNotAsked() {
        outcome = Outcome.NO_REPLY;
        rounds.watch(List.of(target(1)));
        await().until(() -> !rounds.reachable(1));
        assertThat(rounds.aside(1, memory -> new CompletableFuture<String>())).isEmpty();
        assertThat(rounds.aside(9, memory -> new CompletableFuture<String>())).isEmpty();
        outcome = Outcome.ANSWERED;
        await().until(() -> rounds.reachable(1));
    }

    @Test
    void aDeviceTakenOutMeanwhileIsNotAsked() {
        rounds.watch(List.of(target(1)));
        CompletableFuture<String> first = new CompletableFuture<>();
        rounds.aside(1, memory -> first).orElseThrow();
        CompletableFuture<String> second = rounds.aside(1, memory -> CompletableFuture.completedFuture("asked"))
                .orElseThrow();
        rounds.watch(List.of());
        first.complete("");
        assertThat(second).isCompletedExceptionally();
        assertThat(second.handle((answer, fault) -> fault).join()).isInstanceOf(CancellationException.class);
    }

    @Test
    void anErrandThatThrowsGivesItsPlaceBack() {
        rounds.watch(List.of(target(1)));
        for (int i = 0; i < 5; i++) {
            CompletableFuture<String> broken = rounds.<String>aside(1, memory -> {
                        throw new IllegalStateException("planted");
                    })
                    .orElseThrow();
            assertThat(broken).isCompletedExceptionally();
        }
        int before = stored.size();
        await().until(() -> stored.size() > before);
    }

    @Test
    void aRestartIsTold() {
        Queue<Long> told = new ConcurrentLinkedQueue<>();
        rounds.onRestart(told::add);
        restarted = true;
        rounds.watch(List.of(target(1)));
        await().until(() -> told.contains(1L));
    }
}
