package org.roundsman.demo;

import java.time.Clock;
import org.roundsman.demo.agent.AgentSockets;

/**
 * The agents of a whole invented fleet: each answers SNMP v1 and v2c, or v3, at its own loopback address, as its model
 * and its faults have it at the moment. A device without power or line answers nothing.
 */
public final class AgentHost implements AutoCloseable {

    private final AgentSockets sockets;

    private AgentHost(AgentSockets sockets) {
        this.sockets = sockets;
    }

    /**
     * Starts all agents; when this returns, they answer.
     *
     * @throws AgentsNotStarted when a port is taken, or the limit of open files is too low
     */
    public static AgentHost start(DemoFleet fleet, Faults faults, Clock clock) {
        return new AgentHost(AgentSockets.open(fleet, faults, clock));
    }

    /** Replies sent since the start. */
    public long answers() {
        return sockets.answers();
    }

    @Override
    public void close() {
        sockets.close();
    }
}
