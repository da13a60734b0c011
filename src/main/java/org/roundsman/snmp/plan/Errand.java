package org.roundsman.snmp.plan;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import org.roundsman.measure.Outcome;
import org.roundsman.snmp.RawAnswer;
import org.roundsman.snmp.decode.RawAnswers;
import org.roundsman.snmp.session.Exchange;
import org.roundsman.snmp.session.Peer;
import org.roundsman.snmp.session.Reply;
import org.roundsman.snmp.session.Request;
import org.snmp4j.PDU;
import org.snmp4j.smi.OID;
import org.snmp4j.smi.VariableBinding;

/** What one visit asks and hears: counts, remarks, the first outcome, raw answers. Lives on its agent's thread. */
final class Errand {

    private static final int MOST_REMARKS = 40;

    private final Exchange session;
    private final Peer peer;
    private final RawAnswers names;
    private final Consumer<RuntimeException> fault;
    private final Set<String> remarks = new LinkedHashSet<>();
    private final List<RawAnswer> raw = new ArrayList<>();

    private Outcome outcome;
    private boolean refusedInPart;
    private int requests;
    private int timeouts;
    private long roundTripNanos;
    private long receivedNanos;

    /**
     * @param names names raw answers; null when none are kept
     * @param fault hears of what goes wrong in us while a reply is worked on
     */
    Errand(Exchange session, Peer peer, RawAnswers names, Consumer<RuntimeException> fault) {
        this.fault = fault;
        this.session = session;
        this.peer = peer;
        this.names = names;
    }

    /** Asks; one of the two hears how it ended. The response may carry an error status. */
    void ask(Request request, Consumer<PDU> answered, Runnable failed) {
        session.ask(peer, request, reply -> {
            try {
                hear(reply, answered, failed);
            } catch (RuntimeException e) {
                fault.accept(e);
            }
        });
    }

    /** Asks signed but not encrypted; hears whether the agent answered, be it with an error. */
    void askSigned(Request request, Consumer<Boolean> heard) {
        session.askSigned(peer, request, reply -> {
            try {
                requests += reply.sent();
                timeouts += reply.timeouts();
                heard.accept(reply.answered() || reply.outcome().kind() == Outcome.Kind.REFUSED);
            } catch (RuntimeException e) {
                fault.accept(e);
            }
        });
    }

    boolean doubtsPrivacy() {
        return peer.doubtsPrivacy();
    }

    private void hear(Reply reply, Consumer<PDU> answered, Runnable failed) {
        if (count(reply)) {
            keep(reply.pdu());
            answered.accept(reply.pdu());
        } else {
            failed.run();
        }
    }

    private boolean count(Reply reply) {
        requests += reply.sent();
        timeouts += reply.timeouts();
        Outcome ended = reply.outcome();
        if (reply.answered() && isDenied(reply.pdu())) {
            ended = Outcome.ACCESS_DENIED;
        }
        if (reply.remark() != null) {
            remark(reply.remark());
        }
        if (outcome == null) {
            outcome = ended;
            roundTripNanos = reply.roundTripNanos();
        } else if (ended != Outcome.ANSWERED) {
            remark("a later request of the visit failed: " + ended.text());
        }
        receivedNanos = reply.receivedNanos();
        return ended == Outcome.ANSWERED;
    }

    private static boolean isDenied(PDU pdu) {
        return pdu.getErrorStatus() == PDU.authorizationError || pdu.getErrorStatus() == PDU.noAccess;
    }

    private void keep(PDU pdu) {
        if (names != null) {
            for (VariableBinding binding : pdu.getVariableBindings()) {
                raw.add(names.of(binding));
            }
        }
    }

    void refused(Outcome reason) {
        outcome = reason;
    }

    /** The first request is to be asked anew. */
    void forgetOutcome() {
        outcome = null;
    }

    void remark(String text) {
        if (remarks.size() < MOST_REMARKS) {
            remarks.add(text);
        }
    }

    /** How the first request ended; later ones do not undo that the device answered. */
    Outcome outcome() {
        return outcome;
    }

    boolean isAnswered() {
        return outcome == Outcome.ANSWERED;
    }

    /** A Get was refused as it was, for its size or for one of its objects. */
    void noteRefusal() {
        refusedInPart = true;
    }

    boolean wasRefusedInPart() {
        return refusedInPart;
    }

    boolean isVersion1() {
        return peer.agent().access() instanceof org.roundsman.snmp.SnmpAccess.Community c && c.version() == 1;
    }

    int requests() {
        return requests;
    }

    int timeouts() {
        return timeouts;
    }

    double roundTripMillis() {
        return roundTripNanos / 1e6;
    }

    long receivedNanos() {
        return receivedNanos;
    }

    List<RawAnswer> raw() {
        return raw;
    }

    List<String> remarks() {
        return List.copyOf(remarks);
    }

    /** Request for the successor of each object, in the agent's version: one row where repetitions are impossible. */
    Request next(List<OID> after, int repetitions) {
        return isVersion1() || repetitions <= 1 ? Request.getNext(after) : Request.getBulk(after, repetitions);
    }
}
