package org.roundsman.demo.agent;

import javax.crypto.Cipher;

/** Puts a PDU into an SNMP v3 message of an agent (RFC 3412, RFC 3414). One thread at a time. */
final class SecureEnvelope {

    static final int AUTH = 1;
    static final int PRIV = 2;
    static final int USM = 3;
    private static final int VERSION = 3;
    private static final byte[] NOTHING = {};

    private final BerWriter out;
    private final Seals seals;
    private long salts = System.nanoTime();

    SecureEnvelope(BerWriter out, Seals seals) {
        this.out = out;
        this.seals = seals;
    }

    /**
     * Wraps the PDU written since {@code start}.
     *
     * @param level flags: {@link #AUTH}, {@link #PRIV}
     */
    void wrap(AgentState agent, int start, int level, int messageId, byte[] userName) {
        out.string(Tags.OCTET_STRING, NOTHING);
        out.string(Tags.OCTET_STRING, agent.usm.engineId());
        out.head(Tags.SEQUENCE, start);
        byte[] salt = NOTHING;
        if ((level & PRIV) != 0) {
            salt = encrypt(agent, start);
        }
        int parameters = out.position();
        out.string(Tags.OCTET_STRING, salt);
        out.string(Tags.OCTET_STRING, new byte[(level & AUTH) != 0 ? Seals.DIGEST_OCTETS : 0]);
        int digestAt = out.position() + 2;
        out.string(Tags.OCTET_STRING, userName);
        out.integer(Tags.INTEGER, agent.engineTime());
        out.integer(Tags.INTEGER, agent.engineBoots());
        out.string(Tags.OCTET_STRING, agent.usm.engineId());
        out.head(Tags.SEQUENCE, parameters);
        out.head(Tags.OCTET_STRING, parameters);
        writeHeader(level, messageId);
        out.integer(Tags.INTEGER, VERSION);
        out.head(Tags.SEQUENCE, start);
        if ((level & AUTH) != 0) {
            byte[] digest = seals.digest(agent.usm.authKey(), out.buffer(), out.position(), start - out.position());
            System.arraycopy(digest, 0, out.buffer(), digestAt, digest.length);
        }
    }

    private void writeHeader(int level, int messageId) {
        int start = out.position();
        out.integer(Tags.INTEGER, USM);
        out.string(Tags.OCTET_STRING, new byte[] {(byte) level});
        out.integer(Tags.INTEGER, Limits.MESSAGE_OCTETS);
        out.integer(Tags.INTEGER, messageId);
        out.head(Tags.SEQUENCE, start);
    }

    private byte[] encrypt(AgentState agent, int start) {
        byte[] salt = new byte[Seals.SALT_OCTETS];
        long next = ++salts;
        for (int i = 0; i < salt.length; i++) {
            salt[i] = (byte) (next >> 8 * i);
        }
        Seals.Moment moment = new Seals.Moment(agent.engineBoots(), agent.engineTime());
        int from = out.position();
        seals.turn(Cipher.ENCRYPT_MODE, agent.usm.privKey(), moment, salt, out.buffer(), from, start - from);
        out.head(Tags.OCTET_STRING, start);
        return salt;
    }
}
