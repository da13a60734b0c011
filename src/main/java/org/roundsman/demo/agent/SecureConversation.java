package org.roundsman.demo.agent;

import java.util.Arrays;
import javax.crypto.Cipher;
import org.roundsman.demo.agent.BerReader.Malformed;
import org.roundsman.demo.agent.Usm.Cause;

/** The SNMP v3 side of a conversation: RFC 3412 messages under the user-based model of RFC 3414. One thread at a time. */
final class SecureConversation {

    private static final int VERSION = 3;
    private static final int AUTH = 1;
    private static final int PRIV = 2;
    private static final int REPORTABLE = 4;
    private static final int USM = 3;
    private static final int WINDOW_SECONDS = 150;
    private static final int FIELDS = 160;
    private static final byte[] NOTHING = {};

    private final BerReader in;
    private final BerWriter out;
    private final PduAnswer pdus;
    private final Seals seals = new Seals();
    private long salts = System.nanoTime();

    private AgentState agent;
    private SecureHeader header;

    SecureConversation(BerReader in, BerWriter out, PduAnswer pdus) {
        this.in = in;
        this.out = out;
        this.pdus = pdus;
    }

    boolean hear(AgentState asked, View view) throws Malformed {
        agent = asked;
        header = SecureHeader.read(in);
        if (header.securityModel() != USM) {
            return false;
        }
        Cause refused = check();
        if (refused != null) {
            return report(refused, refused == Cause.OUT_OF_WINDOW ? AUTH : 0);
        }
        return has(PRIV) ? serveSealed(view) : serve(view);
    }

    /** A wrong privacy key yields noise, which seldom even begins like a PDU and never goes on like one. */
    private boolean serveSealed(View view) throws Malformed {
        if (decrypt()) {
            try {
                return serve(view);
            } catch (Malformed noise) {
                out.clear();
            }
        }
        return report(Cause.DECRYPTION_FAILED, AUTH);
    }

    private boolean has(int flag) {
        return (header.flags() & flag) != 0;
    }

    /** Why the message is not accepted, or null: the steps of RFC 3414, 3.2, in their order. */
    private Cause check() {
        Usm usm = agent.usm;
        if (!Arrays.equals(usm.engineId(), header.engineId())) {
            return Cause.ENGINE_UNKNOWN;
        }
        if (!usm.isUser(header.userName())) {
            return Cause.USER_UNKNOWN;
        }
        if (has(PRIV) && !has(AUTH)) {
            return Cause.LEVEL_UNSUPPORTED;
        }
        if (!has(AUTH)) {
            return null;
        }
        if (agent.keepsOut() || !signed(usm)) {
            return Cause.WRONG_DIGEST;
        }
        boolean late = Math.abs((long) header.time() - agent.engineTime()) > WINDOW_SECONDS;
        return header.boots() != agent.engineBoots() || late ? Cause.OUT_OF_WINDOW : null;
    }

    private boolean signed(Usm usm) {
        byte[] given = header.digest();
        if (given.length != Seals.DIGEST_OCTETS) {
            return false;
        }
        byte[] message = in.buffer();
        Arrays.fill(message, header.digestAt(), header.digestAt() + given.length, (byte) 0);
        return Seals.same(seals.digest(usm.authKey(), message, 0, header.messageEnd()), given);
    }

    /** Decrypts in place; says whether what comes out begins like a PDU. */
    private boolean decrypt() throws Malformed {
        int end = in.head(Tags.OCTET_STRING);
        if (header.salt().length != Seals.SALT_OCTETS) {
            return false;
        }
        int from = in.position();
        Seals.Moment moment = new Seals.Moment(header.boots(), header.time());
        seals.turn(Cipher.DECRYPT_MODE, agent.usm.privKey(), moment, header.salt(), in.buffer(), from, end - from);
        return end > from && in.buffer()[from] == Tags.SEQUENCE;
    }

    private boolean serve(View view) throws Malformed {
        in.head(Tags.SEQUENCE);
        in.string();
        byte[] context = in.string();
        if (context.length > 0) {
            return report(Cause.CONTEXT_UNKNOWN, header.flags() & (AUTH | PRIV));
        }
        int refusal = has(AUTH) && has(PRIV) ? 0 : PduAnswer.AUTHORIZATION_ERROR;
        int start = out.position();
        int room = Math.min(Limits.MESSAGE_OCTETS, Math.max(header.maxSize(), 484)) - FIELDS;
        if (!pdus.answer(in, out, view, room, refusal)) {
            return false;
        }
        wrap(start, header.flags() & (AUTH | PRIV));
        return true;
    }

    private boolean report(Cause cause, int level) {
        if (!has(REPORTABLE)) {
            return false;
        }
        int start = out.position();
        out.unsigned32(Tags.COUNTER32, agent.usm.count(cause));
        out.bytes(cause.name, 0, cause.name.length);
        out.head(Tags.SEQUENCE, start);
        out.head(Tags.SEQUENCE, start);
        out.integer(Tags.INTEGER, 0);
        out.integer(Tags.INTEGER, 0);
        out.integer(Tags.INTEGER, 0);
        out.head(Tags.REPORT, start);
        wrap(start, level);
        return true;
    }

    /** Puts the PDU written since {@code start} into a message of that level. */
    private void wrap(int start, int level) {
        out.string(Tags.OCTET_STRING, NOTHING);
        out.string(Tags.OCTET_STRING, agent.usm.engineId());
        out.head(Tags.SEQUENCE, start);
        byte[] salt = NOTHING;
        if ((level & PRIV) != 0) {
            salt = encrypt(start);
        }
        int parameters = out.position();
        out.string(Tags.OCTET_STRING, salt);
        out.string(Tags.OCTET_STRING, new byte[(level & AUTH) != 0 ? Seals.DIGEST_OCTETS : 0]);
        int digestAt = out.position() + 2;
        out.string(Tags.OCTET_STRING, header.userName());
        out.integer(Tags.INTEGER, agent.engineTime());
        out.integer(Tags.INTEGER, agent.engineBoots());
        out.string(Tags.OCTET_STRING, agent.usm.engineId());
        out.head(Tags.SEQUENCE, parameters);
        out.head(Tags.OCTET_STRING, parameters);
        writeHeader(level);
        out.integer(Tags.INTEGER, VERSION);
        out.head(Tags.SEQUENCE, start);
        if ((level & AUTH) != 0) {
            byte[] digest = seals.digest(agent.usm.authKey(), out.buffer(), out.position(), start - out.position());
            System.arraycopy(digest, 0, out.buffer(), digestAt, digest.length);
        }
    }

    private void writeHeader(int level) {
        int start = out.position();
        out.integer(Tags.INTEGER, USM);
        out.string(Tags.OCTET_STRING, new byte[] {(byte) level});
        out.integer(Tags.INTEGER, Limits.MESSAGE_OCTETS);
        out.integer(Tags.INTEGER, header.messageId());
        out.head(Tags.SEQUENCE, start);
    }

    private byte[] encrypt(int start) {
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
