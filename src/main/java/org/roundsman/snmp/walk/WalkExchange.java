package org.roundsman.snmp.walk;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.function.Consumer;
import org.roundsman.measure.Outcome;
import org.roundsman.snmp.Walk;
import org.roundsman.snmp.session.Exchange;
import org.roundsman.snmp.session.Peer;
import org.roundsman.snmp.session.Reply;
import org.roundsman.snmp.session.Request;

/**
 * Answers out of a stored walk instead of the network. Everything that is asked is answered when {@link #run} is called,
 * one after the other, on that thread: not safe between threads.
 */
public final class WalkExchange implements Exchange {

    private final Deque<Runnable> tasks = new ArrayDeque<>();
    private WalkAgent agent;
    private long nanos;

    /**
     * From now on answers come from this walk.
     *
     * @param nanos when they come, on any line of time that goes on evenly
     */
    public void answerFrom(Walk walk, long atNanos) {
        agent = new WalkAgent(walk);
        nanos = atNanos;
    }

    /** Answers until nothing more is asked. */
    public void run() {
        for (Runnable task = tasks.poll(); task != null; task = tasks.poll()) {
            task.run();
        }
    }

    @Override
    public void meet(Peer peer, Consumer<Outcome> task) {
        tasks.add(() -> task.accept(null));
    }

    @Override
    public void ask(Peer peer, Request request, Consumer<Reply> listener) {
        tasks.add(
                () -> listener.accept(new Reply(Outcome.ANSWERED, agent.answer(request.pdu()), 1, 0, 0, nanos, null)));
    }

    @Override
    public void askSigned(Peer peer, Request request, Consumer<Reply> listener) {
        ask(peer, request, listener);
    }
}
