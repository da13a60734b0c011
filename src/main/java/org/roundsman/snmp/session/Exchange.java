package org.roundsman.snmp.session;

import java.util.function.Consumer;
import org.roundsman.measure.Outcome;

/**
 * Asks agents: over the network ({@link Session}), or out of a stored walk. What makes a visit cannot tell the two
 * apart. Listeners hear on one thread for each peer, and never before the call that asked has returned.
 */
public interface Exchange {

    /**
     * Makes sure that the agent can be asked, then runs a task.
     *
     * @param task gets null when the agent can be asked, else why not
     */
    void meet(Peer peer, Consumer<Outcome> task);

    /** Asks an agent that was met. */
    void ask(Peer peer, Request request, Consumer<Reply> listener);

    /** As {@link #ask}, but signed only, though the agent's level asks for encryption. Never for anything secret. */
    void askSigned(Peer peer, Request request, Consumer<Reply> listener);
}
