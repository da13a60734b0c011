package org.roundsman.polling;

import java.util.ArrayDeque;
import java.util.Queue;
import org.roundsman.snmp.Agent;
import org.roundsman.snmp.DeviceMemory;

/** What is asked of one device beside its rounds: a memory of its own, and one errand at a time. Thread-safe. */
final class AsideLane {

    private final DeviceMemory memory;
    private final Queue<Runnable> turns = new ArrayDeque<>();
    private boolean busy;

    AsideLane(Agent agent) {
        this.memory = new DeviceMemory(agent);
    }

    DeviceMemory memory() {
        return memory;
    }

    /** Runs the errand now, or after the one that goes on. */
    void inTurn(Runnable errand) {
        synchronized (this) {
            if (busy) {
                turns.add(errand);
                return;
            }
            busy = true;
        }
        errand.run();
    }

    /** The errand has ended; the next one that waits may begin. */
    void turnEnded() {
        Runnable next;
        synchronized (this) {
            next = turns.poll();
            busy = next != null;
        }
        if (next != null) {
            next.run();
        }
    }
}
