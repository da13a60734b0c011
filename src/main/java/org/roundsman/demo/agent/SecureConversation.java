package org.roundsman.demo.agent;

import java.util.Arrays;
import javax.crypto.Cipher;
import org.roundsman.demo.agent.BerReader.Malformed;
import org.roundsman.demo.agent.Usm.Cause;

/** The SNMP v3 side of a conversation: RFC 3412 messages under the user-based model of RFC 3414. One thread at a time. */
final class SecureConversation {

    private static final int AUTH = SecureEnvelope.AUTH;
    private static final int PRIV = SecureEnvelope.PRIV;
    private static final int REPORTABLE = 4;
    private static final int WINDOW_SECONDS = 150;
    private static final int FIELDS = 160;

    private final BerReader in;
    private final BerWriter out;
    private final PduAnswer pdus;
    private final Seals seals = new Seals();
    private final SecureEnvelope envelope;

    private AgentState agent;
    private SecureHeader header;

    SecureConversation(BerReader in, BerWriter out, PduAnswer pdus) {
        this.in = in;
        this.out = out;
        this.pdus = pdus;
        this.envelope = new SecureEnvelope(out, seals);
    }

    boolean hear(AgentState asked, View view) throws Malformed {
        agent = asked;
        header = SecureHeader.read(in);
        if (header.securityModel() != SecureEnvelope.USM) {
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

    private void wrap(int start, int level) {
        envelope.wrap(agent, start, level, header.messageId(), header.userName());
    }
}
