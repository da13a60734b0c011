package org.roundsman.snmp;

import java.time.Clock;
import java.util.concurrent.CompletableFuture;

/** Visits SNMP agents. Thread-safe; owns the sockets. */
public final class SnmpVisitor implements AutoCloseable {

    private SnmpVisitor() {}

    /**
     * Opens the sockets.
     *
     * @throws java.io.IOException when no UDP socket can be opened
     */
    public static SnmpVisitor open(SnmpSettings settings, ProfileSet profiles, Clock clock) throws java.io.IOException {
        throw new UnsupportedOperationException();
    }

    /**
     * Visits one agent. The future completes on a receiving thread, always normally: silence and refusal are outcomes.
     */
    public CompletableFuture<Visit> visit(DeviceMemory memory, VisitKind kind) {
        throw new UnsupportedOperationException();
    }

    @Override
    public void close() {}
}
