package org.roundsman.snmp.session;

import java.io.IOException;

/** How one agent is spoken to: its SNMP version and what that version must remember. One thread at a time. */
interface Dialect {

    /**
     * One datagram that asks for the request, or for what must be known first.
     *
     * @param open not encrypted, though the agent's level asks for it
     */
    byte[] encode(Request request, int id, boolean open);

    /**
     * Reads a datagram whose number matched one of ours.
     *
     * @param open the request was not encrypted, though the agent's level asks for it
     * @throws IOException when it cannot be read
     */
    Verdict decode(byte[] datagram, boolean open) throws IOException;

    /** Hears that a request was not answered at all. */
    default void heardNothing() {}

    /** Whether requests are encrypted and nothing ever showed that the agent can read them. */
    default boolean doubtsPrivacy() {
        return false;
    }
}
