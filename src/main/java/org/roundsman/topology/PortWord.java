package org.roundsman.topology;

import java.time.Instant;
import java.util.OptionalInt;

/**
 * What a person said about a device's place. It holds until it is taken back.
 *
 * @param parent name of the device above
 * @param port by {@link Port#number}; empty when only the device above is known
 * @param note why, or empty
 */
public record PortWord(
        long deviceId,
        long parentId,
        String parent,
        OptionalInt port,
        String portName,
        String note,
        String saidBy,
        Instant saidAt) {

    /** In words: {@code port 7 of sw-2}. */
    public String words() {
        return (port.isPresent() ? Port.title(port.getAsInt(), portName) : "port not known") + " of " + parent;
    }
}
