package org.roundsman.snmp.session;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Optional;
import java.util.function.LongSupplier;
import org.roundsman.measure.Outcome;
import org.roundsman.snmp.SnmpAccess;
import org.snmp4j.PDU;

/**
 * SNMPv3 with the user-based security model (RFC 3414), towards one agent. Engine ID, clock and keys are kept per
 * agent and not per engine ID, so that two devices with one engine ID, or one user name with different passwords, do
 * not disturb each other. The cryptography is SNMP4J's.
 */
final class UserDialect implements Dialect {

    private static final int MAX_MESSAGE = 65_507;
    private static final byte[] NOTHING = {};
    private static final Request DISCOVERY = Request.get(java.util.List.of());

    private final SnmpAccess.User user;
    private final byte[] name;
    private final PasswordKeys keys;
    private final LongSupplier nanos;
    private final Octets octets = new Octets();

    private byte[] engineId;
    private Seal seal;
    private int boots;
    private int time;
    private long timeTakenAt;
    /** An encrypted response came back: the privacy key is right. */
    private boolean understood;
    /** Whether the engine still is the one we met is in doubt. */
    private boolean lost;

    UserDialect(SnmpAccess.User user, PasswordKeys keys, LongSupplier nanos) {
        this.user = user;
        this.name = user.name().getBytes(StandardCharsets.UTF_8);
        this.keys = keys;
        this.nanos = nanos;
    }

    @Override
    public byte[] encode(Request request, int id, boolean open) {
        if (engineId == null || lost) {
            byte[] scoped = scoped(DISCOVERY, id, NOTHING);
            octets.clear().prepend(scoped);
            return wrap(id, UserMessage.REPORTABLE, NOTHING, NOTHING, NOTHING, 0);
        }
        int now = engineTime();
        byte[] scoped = scoped(request, id, engineId);
        byte[] salt = NOTHING;
        octets.clear();
        boolean encrypts = seal.encrypts() && !open;
        if (encrypts) {
            Seal.Encrypted encrypted = seal.encrypt(scoped, boots, now);
            salt = encrypted.salt();
            octets.string(encrypted.octets());
        } else {
            octets.prepend(scoped);
        }
        int flags = UserMessage.REPORTABLE | (seal.signs() ? UserMessage.AUTH : 0) | (encrypts ? UserMessage.PRIV : 0);
        return wrap(id, flags, salt, name, engineId, now);
    }

    private byte[] scoped(Request request, int id, byte[] contextEngineId) {
        octets.clear();
        request.writeTo(octets, id);
        return octets.string(NOTHING).string(contextEngineId).wrap(0x30, 0).toArray();
    }

    /** Security parameters, header and version around the data that is in the buffer; signed when the flags say so. */
    private byte[] wrap(int id, int flags, byte[] salt, byte[] userName, byte[] engine, int now) {
        boolean signed = (flags & UserMessage.AUTH) != 0;
        int end = octets.length();
        int signatureFromEnd = octets.string(salt).length();
        octets.string(signed ? new byte[seal.signatureLength()] : NOTHING)
                .string(userName)
                .integer(signed ? now : 0)
                .integer(signed ? boots : 0)
                .string(engine)
                .wrap(0x30, end)
                .wrap(0x04, end);
        end = octets.length();
        byte[] message = octets.integer(3)
                .string(new byte[] {(byte) flags})
                .integer(MAX_MESSAGE)
                .integer(id)
                .wrap(0x30, end)
                .integer(3)
                .wrap(0x30, 0)
                .toArray();
        if (signed) {
            seal.sign(message, message.length - signatureFromEnd - seal.signatureLength());
        }
        return message;
    }

    /** Some agents drop a message for another engine than theirs without a word: so meet it anew. */
    @Override
    public void heardNothing() {
        lost = true;
    }

    @Override
    public boolean doubtsPrivacy() {
        return seal != null && seal.encrypts() && !understood;
    }

    private int engineTime() {
        return (int) Math.min(Integer.MAX_VALUE, time + (nanos.getAsLong() - timeTakenAt) / 1_000_000_000L);
    }

    @Override
    public Verdict decode(byte[] datagram, boolean open) throws IOException {
        UserMessage message = UserMessage.read(datagram);
        if (message.encrypted() && (seal == null || !seal.encrypts())) {
            return new Verdict.Unusable("an encrypted message that was not asked for was ignored");
        }
        boolean authentic = message.signed() && isAuthentic(message, datagram);
        if (message.signed() && !authentic) {
            return new Verdict.Unusable("a reply whose signature is wrong was ignored");
        }
        PDU pdu = scopedPdu(message);
        if (pdu.getType() == PDU.REPORT) {
            return report(message, pdu, authentic);
        }
        boolean asProtected =
                seal != null && seal.signs() == authentic && (seal.encrypts() && !open) == message.encrypted();
        return asProtected
                ? response(message, pdu)
                : new Verdict.Unusable("a reply with less protection than its request was ignored");
    }

    private boolean isAuthentic(UserMessage message, byte[] datagram) {
        return seal != null
                && seal.signs()
                && Arrays.equals(engineId, message.engineId())
                && seal.isAuthentic(datagram, message.signatureAt(), message.signatureLength());
    }

    private PDU scopedPdu(UserMessage message) throws IOException {
        byte[] plain = message.encrypted()
                ? seal.decrypt(message.data(), message.salt(), message.boots(), message.time())
                : message.data();
        return UserMessage.scopedPdu(plain);
    }

    private Verdict response(UserMessage message, PDU pdu) {
        if (engineId == null || !Arrays.equals(engineId, message.engineId()) || !Arrays.equals(name, message.user())) {
            return new Verdict.Unusable("a reply from another engine or for another user was ignored");
        }
        if (pdu.getType() != PDU.RESPONSE) {
            return new Verdict.Unusable("a message that is no response was ignored");
        }
        if (message.signed()) {
            takeTime(message);
        }
        understood |= message.encrypted();
        return new Verdict.Answer(pdu);
    }

    private Verdict report(UserMessage message, PDU pdu, boolean authentic) {
        Optional<Outcome> cause = ReportCause.of(pdu);
        if (cause.isEmpty()) {
            return new Verdict.Unusable("a report with an unknown counter was ignored");
        }
        if (cause.get() == Outcome.ENGINE_UNKNOWN) {
            return meet(message);
        }
        if (cause.get() == Outcome.TIME_WINDOW && authentic) {
            takeTime(message);
            return new Verdict.Again(Outcome.TIME_WINDOW, null);
        }
        return new Verdict.Refused(cause.get());
    }

    /** Takes the engine ID from a report (RFC 3414 section 4), and its clock as a first guess. */
    private Verdict meet(UserMessage message) {
        byte[] told = message.engineId();
        if (told.length < 5 || told.length > 32) {
            return new Verdict.Refused(Outcome.ENGINE_UNKNOWN);
        }
        String remark = null;
        if (!Arrays.equals(engineId, told)) {
            remark = engineId == null ? null : "the engine ID changed";
            engineId = told;
            seal = new Seal(user, told, keys);
            understood = false;
        }
        lost = false;
        takeTime(message);
        return new Verdict.Again(Outcome.ENGINE_UNKNOWN, remark);
    }

    /**
     * Takes over the engine's clock, also when it went back. RFC 3414 section 3.2 would drop such a message as a
     * replay; here its number was drawn at random for this one request, so an authentic message that carries it is
     * fresh, and a device that lost its boot count stays readable.
     */
    private void takeTime(UserMessage message) {
        boots = message.boots();
        time = message.time();
        timeTakenAt = nanos.getAsLong();
    }
}
