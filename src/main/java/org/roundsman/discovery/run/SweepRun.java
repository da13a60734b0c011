package org.roundsman.discovery.run;

import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Queue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicInteger;
import org.roundsman.discovery.AddressRanges.Target;
import org.roundsman.measure.Facts;
import org.roundsman.measure.Metric;
import org.roundsman.measure.Outcome;
import org.roundsman.snmp.Agent;
import org.roundsman.snmp.DeviceMemory;
import org.roundsman.snmp.Visit;
import org.roundsman.snmp.VisitKind;

/**
 * Asks the addresses of one sweep: each with one credential after the other by one small Get, and what answers for its
 * facts. So many addresses at a time, so many requests a second. Never blocks; all state is touched by one thread at a
 * time, whichever brings news.
 */
public final class SweepRun {

    /** How agents are visited; {@code SnmpVisitor::visit} outside of tests. */
    public interface Asker {
        CompletableFuture<Visit> ask(DeviceMemory memory, VisitKind kind);
    }

    /** Does something later. */
    public interface Timer {
        void after(long nanos, Runnable task);
    }

    /** Hears what became of each address, and at last that there is no more to come. */
    public interface Listener {
        void heard(Heard heard);

        /** @param whole whether every address was heard of */
        void ended(boolean whole);
    }

    /**
     * How to go about it.
     *
     * @param inFlight addresses at the same time
     */
    public record Manner(Asker asker, Pace pace, Timer timer, int inFlight) {}

    /** Requests that reading all facts of a device takes, as a first guess; what it really took is settled. */
    static final int SURVEY = 12;

    private static final Facts NOTHING = new Facts(Map.of(), List.of(), List.of());

    private final Manner manner;
    private final List<Key> keys;
    private final Iterator<Target> fresh;
    private final Listener listener;
    private final Queue<Runnable> news = new ConcurrentLinkedQueue<>();
    private final AtomicInteger turns = new AtomicInteger();
    private final Deque<Call> going = new ArrayDeque<>();

    private int inFlight;
    private boolean waiting;
    private boolean stopped;
    private boolean ended;

    public SweepRun(Manner manner, List<Key> keys, List<Target> targets, Listener listener) {
        this.manner = manner;
        this.keys = List.copyOf(keys);
        this.fresh = new ArrayList<>(targets).iterator();
        this.listener = listener;
    }

    public void begin() {
        turn(() -> {});
    }

    /** Asks no more; what is under way may still be heard. */
    public void stop() {
        turn(() -> stopped = true);
    }

    /** One address on its way. */
    private final class Call {
        final Target target;
        int key;
        VisitKind next = VisitKind.KNOCK;
        int surveys;
        DeviceMemory memory;
        Heard refusal;

        Call(Target target) {
            this.target = target;
        }

        int cost() {
            return next == VisitKind.KNOCK ? 1 : SURVEY;
        }
    }

    private void turn(Runnable task) {
        news.add(task);
        if (turns.getAndIncrement() > 0) {
            return; // whoever is at it takes this on as well
        }
        int taken = 1;
        do {
            for (Runnable one = news.poll(); one != null; one = news.poll()) {
                one.run();
            }
            launch();
            taken = turns.addAndGet(-taken);
        } while (taken > 0);
    }

    private void launch() {
        while (!waiting) {
            Call call = next();
            if (call == null) {
                break;
            }
            long wait = manner.pace().take(call.cost());
            if (wait > 0) {
                going.addFirst(call);
                waiting = true;
                manner.timer().after(wait, () -> turn(() -> waiting = false));
                break;
            }
            ask(call);
        }
        boolean over = stopped ? inFlight == going.size() : inFlight == 0 && !fresh.hasNext();
        if (over && !ended) {
            ended = true;
            listener.ended(inFlight == 0 && !fresh.hasNext());
        }
    }

    /** Those that were begun come first. */
    private Call next() {
        if (stopped) {
            return null;
        }
        if (!going.isEmpty()) {
            return going.removeFirst();
        }
        if (inFlight < manner.inFlight() && fresh.hasNext()) {
            inFlight++;
            return new Call(fresh.next());
        }
        return null;
    }

    private void ask(Call call) {
        Key key = keys.get(call.key);
        if (call.next == VisitKind.KNOCK) {
            call.memory = new DeviceMemory(new Agent(call.target.host(), call.target.port(), key.access()));
        }
        manner.asker()
                .ask(call.memory, call.next)
                .whenComplete((visit, fault) -> turn(() -> {
                    manner.pace().settle(call.cost(), visit == null ? call.cost() : visit.requests());
                    if (visit == null) {
                        // The visitor was closed under us: nothing is known of this address, and it stays to be asked.
                        stopped = true;
                        inFlight--;
                    } else if (call.next == VisitKind.KNOCK) {
                        knocked(call, visit);
                    } else {
                        surveyed(call, visit);
                    }
                }));
    }

    private void knocked(Call call, Visit visit) {
        Outcome outcome = visit.outcome();
        if (outcome == Outcome.ANSWERED) {
            call.next = VisitKind.ROUND;
            going.add(call);
            return;
        }
        if (outcome.kind() == Outcome.Kind.REFUSED && call.refusal == null) {
            call.refusal = heard(call, visit, remark(visit));
        }
        // Behind a closed port nobody waits for other credentials.
        if (outcome != Outcome.PORT_CLOSED && call.key + 1 < keys.size()) {
            call.key++;
            going.add(call);
        } else {
            end(call.refusal != null ? call.refusal : heard(call, visit, ""));
        }
    }

    private void surveyed(Call call, Visit visit) {
        call.surveys++;
        boolean told = visit.facts().isPresent();
        if (told || call.surveys > 1) {
            String remark = told ? "" : "it answered, and fell silent while it was read: little is known of it";
            end(answered(call, visit, remark));
        } else {
            going.add(call);
        }
    }

    private void end(Heard heard) {
        inFlight--;
        listener.heard(heard);
    }

    private Heard answered(Call call, Visit visit, String remark) {
        return heard(call, visit, Outcome.ANSWERED, remark);
    }

    private Heard heard(Call call, Visit visit, String remark) {
        return heard(call, visit, visit.outcome(), remark);
    }

    private Heard heard(Call call, Visit visit, Outcome outcome, String remark) {
        boolean speaks = outcome.kind() != Outcome.Kind.UNANSWERED;
        Instant at = visit.at();
        OptionalDouble uptime = visit.device().get(Metric.UPTIME);
        Long credential = speaks ? keys.get(call.key).credentialId() : null;
        return new Heard(
                call.target,
                outcome,
                credential,
                at,
                uptime,
                visit.profiles(),
                visit.facts().orElse(NOTHING),
                remark);
    }

    private static String remark(Visit visit) {
        return String.join("; ", visit.remarks());
    }
}
