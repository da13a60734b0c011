package org.roundsman.snmp.walk;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Executor;
import java.util.concurrent.TimeUnit;
import java.util.function.IntPredicate;
import org.roundsman.measure.Outcome;
import org.roundsman.snmp.FetchedWalk;
import org.roundsman.snmp.SnmpAccess;
import org.roundsman.snmp.Walk;
import org.roundsman.snmp.WalkBounds;
import org.roundsman.snmp.session.Exchange;
import org.roundsman.snmp.session.Peer;
import org.roundsman.snmp.session.Reply;
import org.roundsman.snmp.session.Request;
import org.snmp4j.PDU;
import org.snmp4j.smi.OID;
import org.snmp4j.smi.Variable;
import org.snmp4j.smi.VariableBinding;

/** Reads everything that one agent has, by GetBulk, or by GetNext in SNMPv1. One request is on its way at a time. */
public final class WalkFetch {

    /** Below everything that an agent may carry: LLDP-MIB stands under 1.0, all else under 1.2 and 1.3. */
    private static final OID FIRST = new OID("1.0");

    private static final int FIRST_REPETITIONS = 25;
    /** A request that got no reply is asked again so often, with fewer repetitions each time. */
    private static final int SECOND_CHANCES = 3;

    private final Exchange exchange;
    private final Peer peer;
    private final WalkBounds bounds;
    private final Ends ends;
    private final Executor later;
    private final TreeMap<OID, Variable> found = new TreeMap<>();
    private final List<String> remarks = new ArrayList<>();

    private final Instant at;
    private int repetitions;
    private int chances = SECOND_CHANCES;
    private OID last = FIRST;

    /**
     * Who hears of it.
     *
     * @param progress answers whether to go on
     */
    public record Ends(IntPredicate progress, CompletableFuture<FetchedWalk> future) {}

    private WalkFetch(Exchange exchange, Peer peer, WalkBounds bounds, Instant at, Ends ends) {
        this.exchange = exchange;
        this.peer = peer;
        this.bounds = bounds;
        this.ends = ends;
        this.at = at;
        this.later = CompletableFuture.delayedExecutor(bounds.pause().toNanos(), TimeUnit.NANOSECONDS);
        boolean version1 = peer.agent().access() instanceof SnmpAccess.Community c && c.version() == 1;
        this.repetitions = version1 ? 1 : FIRST_REPETITIONS;
    }

    /** Reads; the future completes normally, also when the agent stays silent. */
    public static void start(Exchange exchange, Peer peer, WalkBounds bounds, Clock clock, Ends ends) {
        Instant at = clock.instant().truncatedTo(ChronoUnit.MILLIS);
        WalkFetch fetch = new WalkFetch(exchange, peer, bounds, at, ends);
        fetch.meet();
    }

    private void meet() {
        exchange.meet(peer, refusal -> {
            if (refusal != null) {
                end(refusal, false);
            } else {
                ask();
            }
        });
    }

    private void ask() {
        Request request =
                repetitions == 1 ? Request.getNext(List.of(last)) : Request.getBulk(List.of(last), repetitions);
        exchange.ask(peer, request, reply -> {
            try {
                hear(reply);
            } catch (RuntimeException e) {
                ends.future().completeExceptionally(e);
            }
        });
    }

    private void hear(Reply reply) {
        if (!reply.answered()) {
            unanswered(reply);
            return;
        }
        chances = SECOND_CHANCES;
        int status = reply.pdu().getErrorStatus();
        if (status == PDU.tooBig && repetitions > 1) {
            repetitions = Math.max(1, repetitions / 2);
            pause();
        } else if (status == PDU.noSuchName) {
            end(Outcome.ANSWERED, true);
        } else if (status == PDU.authorizationError || status == PDU.noAccess) {
            end(Outcome.ACCESS_DENIED, false);
        } else if (status != PDU.noError) {
            remarks.add("the device refused to go on after " + last.toDottedString() + ": "
                    + reply.pdu().getErrorStatusText());
            end(Outcome.ANSWERED, false);
        } else {
            take(reply.pdu());
        }
    }

    private void unanswered(Reply reply) {
        boolean begun = !found.isEmpty();
        if (begun && chances-- > 0) {
            repetitions = Math.max(1, repetitions / 2);
            pause();
            return;
        }
        if (begun) {
            remarks.add("no reply to what comes after " + last.toDottedString() + ": "
                    + reply.outcome().text() + "; the rest was not read");
        }
        end(begun ? Outcome.ANSWERED : reply.outcome(), false);
    }

    private void take(PDU pdu) {
        for (VariableBinding binding : pdu.getVariableBindings()) {
            if (binding.isException()) {
                end(Outcome.ANSWERED, true);
                return;
            }
            if (binding.getOid().compareTo(last) <= 0) {
                remarks.add("the device does not advance: after " + last.toDottedString() + " it gives "
                        + binding.getOid().toDottedString() + "; the rest was not read");
                end(Outcome.ANSWERED, false);
                return;
            }
            if (found.size() >= bounds.variables()) {
                remarks.add("the device has more than " + bounds.variables() + " variables; the rest was not read");
                end(Outcome.ANSWERED, false);
                return;
            }
            last = binding.getOid();
            found.put(last, binding.getVariable());
        }
        if (pdu.size() == 0) {
            remarks.add("an empty reply came after " + last.toDottedString() + "; the rest was not read");
            end(Outcome.ANSWERED, false);
        } else if (ends.progress().test(found.size())) {
            pause();
        } else {
            remarks.add("it was stopped after " + last.toDottedString() + "; the rest was not read");
            end(Outcome.ANSWERED, false);
        }
    }

    private void pause() {
        // Back on the agent's own thread after the pause.
        later.execute(this::meet);
    }

    private void end(Outcome outcome, boolean complete) {
        ends.future().complete(new FetchedWalk(at, outcome, new Walk(found), complete, remarks));
    }
}
