package org.roundsman.snmp;

import java.util.function.Supplier;
import org.roundsman.snmp.plan.DeviceRecord;

/**
 * What must be remembered of one agent between visits: profiles chosen, counters last seen, uptime, table sizes, engine.
 * One visit at a time may use it; the caller sees to that.
 */
public final class DeviceMemory {

    private final Agent agent;
    private Object owner;
    private DeviceRecord record;

    public DeviceMemory(Agent agent) {
        this.agent = agent;
    }

    public Agent agent() {
        return agent;
    }

    /** The record made for that owner; a new one when the memory comes from another. */
    synchronized DeviceRecord record(Object wanted, Supplier<DeviceRecord> made) {
        if (owner != wanted) {
            owner = wanted;
            record = made.get();
        }
        return record;
    }
}
