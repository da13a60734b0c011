package org.roundsman.snmp;

/**
 * What must be remembered of one agent between visits: profiles chosen, counters last seen, uptime, table sizes, engine.
 * One visit at a time may use it; the caller sees to that.
 */
public final class DeviceMemory {

    private final Agent agent;

    public DeviceMemory(Agent agent) {
        this.agent = agent;
    }

    public Agent agent() {
        return agent;
    }
}
