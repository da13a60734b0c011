package org.roundsman.discovery.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.PriorityQueue;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.Test;
import org.roundsman.discovery.AddressRanges;
import org.roundsman.discovery.AddressRanges.Target;
import org.roundsman.measure.Fact;
import org.roundsman.measure.Facts;
import org.roundsman.measure.Outcome;
import org.roundsman.measure.Subject;
import org.roundsman.measure.Values;
import org.roundsman.snmp.DeviceMemory;
import org.roundsman.snmp.SnmpAccess;
import org.roundsman.snmp.Visit;
import org.roundsman.snmp.VisitKind;

/** A sweep in simulated time: no clock, no thread, no network. The rules are the project's own. */
class SweepRunTest {

    private static final long SILENCE = 2_000_000_000L;
    private static final long ANSWER = 2_000_000L;

    private record Due(long at, int order, Runnable task) implements Comparable<Due> {
        @Override
        public int compareTo(Due other) {
            return at == other.at ? Integer.compare(order, other.order) : Long.compare(at, other.at);
        }
    }

    private record Asked(long at, String host, long credential, VisitKind kind) {}

    private final PriorityQueue<Due> due = new PriorityQueue<>();
    private final List<Asked> asked = new ArrayList<>();
    private final Map<String, Outcome> outcomes = new HashMap<>();
    private final List<Heard> heard = new ArrayList<>();
    private final List<Key> keys = new ArrayList<>(List.of(key(1), key(2)));
    private int order;
    private long now;
    private int inFlight;
    private int mostInFlight;
    private Boolean ended;

    private static Key key(long id) {
        return new Key(id, new SnmpAccess.Community(2, "word " + id));
    }

    private SweepRun run(List<Target> targets, int perSecond, int atOnce) {
        SweepRun.Manner manner = new SweepRun.Manner(this::ask, new Pace(perSecond, () -> now), this::after, atOnce);
        return new SweepRun(manner, keys, targets, new SweepRun.Listener() {
            @Override
            public void heard(Heard one) {
                heard.add(one);
            }

            @Override
            public void ended(boolean whole) {
                ended = whole;
            }
        });
    }

    private void after(long nanos, Runnable task) {
        due.add(new Due(now + nanos, order++, task));
    }

    private CompletableFuture<Visit> ask(DeviceMemory memory, VisitKind kind) {
        SnmpAccess.Community access = (SnmpAccess.Community) memory.agent().access();
        long credential = Long.parseLong(access.community().substring(5));
        String host = memory.agent().host();
        asked.add(new Asked(now, host, credential, kind));
        mostInFlight = Math.max(mostInFlight, ++inFlight);
        Outcome outcome = outcomes.getOrDefault(host + " " + credential, Outcome.NO_REPLY);
        boolean silent = outcome == Outcome.NO_REPLY;
        CompletableFuture<Visit> visit = new CompletableFuture<>();
        after(silent ? SILENCE : ANSWER, () -> {
            inFlight--;
            visit.complete(visit(outcome, kind, silent ? 2 : 1));
        });
        return visit;
    }

    private static Visit visit(Outcome outcome, VisitKind kind, int requests) {
        boolean told = kind == VisitKind.ROUND && outcome == Outcome.ANSWERED;
        Facts facts = new Facts(Map.of(Fact.SERIAL, "TR-0001"), List.of(), List.of());
        return new Visit(
                Instant.EPOCH,
                outcome,
                Values.none(Subject.DEVICE),
                List.of(),
                List.of(),
                told ? Optional.of(facts) : Optional.empty(),
                List.of(),
                false,
                told ? 15 : requests,
                0,
                List.of(),
                List.of());
    }

    private void play(long until) {
        while (!due.isEmpty() && due.peek().at <= until) {
            Due next = due.remove();
            now = next.at;
            next.task.run();
        }
    }

    private static List<Target> targets(String ranges) {
        return AddressRanges.read(ranges).targets(List.of(161));
    }

    @Test
    void credentialsAreTriedInOrderAndOnlyWhatAnswersIsReadWhole() {
        outcomes.put("192.0.2.2 2", Outcome.ANSWERED);
        outcomes.put("192.0.2.3 1", Outcome.PORT_CLOSED);
        outcomes.put("192.0.2.4 1", Outcome.WRONG_DIGEST);
        outcomes.put("192.0.2.5 1", Outcome.USER_UNKNOWN);
        outcomes.put("192.0.2.5 2", Outcome.ANSWERED);
        run(targets("192.0.2.1-192.0.2.5"), 1000, 10).begin();
        play(Long.MAX_VALUE);
        Map<String, String> results = new HashMap<>();
        heard.forEach(h -> results.put(h.target().host(), h.outcome() + " " + h.credentialId()));
        assertThat(results)
                .containsOnly(
                        Map.entry("192.0.2.1", "NO_REPLY null"),
                        Map.entry("192.0.2.2", "ANSWERED 2"),
                        Map.entry("192.0.2.3", "PORT_CLOSED null"),
                        Map.entry("192.0.2.4", "WRONG_DIGEST 1"),
                        Map.entry("192.0.2.5", "ANSWERED 2"));
        assertThat(asked.stream().filter(a -> a.kind() == VisitKind.ROUND))
                .extracting(Asked::host)
                .containsExactlyInAnyOrder("192.0.2.2", "192.0.2.5");
        assertThat(asked.stream().filter(a -> a.host().equals("192.0.2.3"))).hasSize(1);
        assertThat(ended).isTrue();
    }

    @Test
    void addressesAtATimeAndRequestsASecondStayWithinTheirBounds() {
        targets("10.0.0.0/22").stream()
                .filter(t -> t.place() % 4 == 0)
                .forEach(t -> outcomes.put(t.host() + " 1", Outcome.ANSWERED));
        run(targets("10.0.0.0/22"), 50, 32).begin();
        play(Long.MAX_VALUE);
        assertThat(heard).hasSize(1022);
        assertThat(mostInFlight).isBetween(2, 32);
        long sent = 256 * 16 + 766 * 4;
        assertThat(now / 1e9).isGreaterThan(sent / 50.0 - 1);
    }

    @Test
    void whatIsCancelledAsksNoMore() {
        SweepRun run = run(targets("10.0.0.0/22"), 100, 32);
        run.begin();
        play(5_000_000_000L);
        run.stop();
        int before = asked.size();
        play(Long.MAX_VALUE);
        assertThat(asked).hasSize(before);
        assertThat(ended).isFalse();
        assertThat(heard).hasSizeLessThan(1022);
    }

    @Test
    void nobodyIsAskedTwiceWithTheSame() {
        run(targets("10.0.0.0/24"), 1000, 16).begin();
        play(Long.MAX_VALUE);
        assertThat(asked)
                .extracting(a -> a.host() + a.credential())
                .doesNotHaveDuplicates()
                .hasSize(508);
    }
}
