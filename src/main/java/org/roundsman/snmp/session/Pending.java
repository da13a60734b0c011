package org.roundsman.snmp.session;

import java.nio.channels.SelectionKey;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.roundsman.measure.Outcome;
import org.snmp4j.PDU;

/** One request on its way, with all of its tries. Lives on its loop's thread. */
final class Pending {

    private static final int MOST_EXCHANGES = 2;

    final Peer peer;
    final Request request;
    /** Signed only, though the agent's level asks for encryption. */
    final boolean open;

    private final Consumer<Reply> listener;

    int sent;
    int timeouts;
    int triesLeft;
    boolean done;
    /** Numbers of tries that timed out and may still be answered. */
    final List<Integer> overdue = new ArrayList<>(2);
    /** The socket of the last try, which learns of ICMP errors; null unless one is open. */
    SelectionKey connected;

    private boolean unreadable;
    private int meetings;
    private int synchronisations;
    private String remark;

    Pending(Peer peer, Request request, boolean open, int tries, Consumer<Reply> listener) {
        this.open = open;
        this.peer = peer;
        this.request = request;
        this.triesLeft = tries;
        this.listener = listener;
    }

    void sawUnreadable() {
        unreadable = true;
    }

    void remark(String text) {
        if (text != null && remark == null) {
            remark = text;
        }
    }

    /** Whether asking again for this cause is worth it: twice to meet an engine, once to take its clock. */
    boolean mayAskAgain(Outcome cause) {
        return cause == Outcome.TIME_WINDOW ? ++synchronisations <= 1 : ++meetings <= MOST_EXCHANGES;
    }

    Outcome silence() {
        return unreadable ? Outcome.UNREADABLE_REPLY : Outcome.NO_REPLY;
    }

    void answered(PDU pdu, long roundTripNanos, long now) {
        listener.accept(new Reply(Outcome.ANSWERED, pdu, sent, timeouts, roundTripNanos, now, remark));
    }

    void failed(Outcome outcome, long now) {
        listener.accept(new Reply(outcome, null, sent, timeouts, 0, now, remark));
    }
}
