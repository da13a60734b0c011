package org.roundsman.topology;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;

/**
 * On what a device hangs, as far as it is known.
 *
 * @param parentId the device above it; empty when nothing is known
 * @param port the port of that device, by {@link Port#number}; may be empty though the device is known
 * @param portName what that device calls the port, or empty
 * @param how the kind of evidence that decided
 * @param reason the evidence in words
 * @param notes what speaks against it, and other links, in words
 * @param old the evidence was missing at the last readings; it stays until other evidence takes its place
 * @param seenAt when the evidence was last seen, or the person spoke
 */
public record Attachment(
        long deviceId,
        OptionalLong parentId,
        OptionalInt port,
        String portName,
        How how,
        String reason,
        List<String> notes,
        boolean old,
        Optional<Instant> seenAt) {

    public Attachment {
        notes = List.copyOf(notes);
    }

    /** Nothing is known. */
    public static Attachment unknown(long deviceId, String reason, List<String> notes) {
        return new Attachment(
                deviceId,
                OptionalLong.empty(),
                OptionalInt.empty(),
                "",
                How.NOTHING,
                reason,
                notes,
                false,
                Optional.empty());
    }

    public boolean known() {
        return parentId.isPresent();
    }

    /** The port in words, or that it is not known. */
    public String portTitle() {
        return port.isPresent() ? Port.title(port.getAsInt(), portName) : "port not known";
    }
}
