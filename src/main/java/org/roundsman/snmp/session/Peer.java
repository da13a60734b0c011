package org.roundsman.snmp.session;

import java.net.InetSocketAddress;
import org.roundsman.snmp.Agent;

/**
 * One agent as a session remembers it: its loop, its address, its dialect. Used on its loop's thread only.
 */
public final class Peer {

    private final Agent agent;
    final Loop loop;
    final Dialect dialect;
    InetSocketAddress address;
    long addressTakenAt;

    Peer(Agent agent, Loop loop, Dialect dialect) {
        this.agent = agent;
        this.loop = loop;
        this.dialect = dialect;
    }

    /** An agent that is asked without a network. */
    public static Peer offline(Agent agent) {
        return new Peer(agent, null, null);
    }

    public Agent agent() {
        return agent;
    }

    /** Whether requests are encrypted and nothing ever showed that the agent can read them. */
    public boolean doubtsPrivacy() {
        return dialect != null && dialect.doubtsPrivacy();
    }
}
