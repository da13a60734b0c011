package org.roundsman.snmp.session;

import java.io.IOException;

/** How one agent is spoken to: its SNMP version and what that version must remember. One thread at a time. */
interface Dialect {

    /** One datagram that asks for the request, or for what must be known first. */
    byte[] encode(Request request, int id);

    /**
     * Reads a datagram whose number matched one of ours.
     *
     * @throws IOException when it cannot be read
     */
    Verdict decode(byte[] datagram) throws IOException;
}
