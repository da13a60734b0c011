package org.roundsman.snmp.notice;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.function.LongSupplier;
import org.roundsman.snmp.EngineIdentity;
import org.roundsman.snmp.session.Octets;
import org.roundsman.snmp.session.Seal;
import org.roundsman.snmp.session.UserMessage;
import org.snmp4j.PDU;
import org.snmp4j.ScopedPDU;
import org.snmp4j.asn1.BEROutputStream;
import org.snmp4j.smi.Counter32;
import org.snmp4j.smi.Integer32;
import org.snmp4j.smi.OID;
import org.snmp4j.smi.OctetString;
import org.snmp4j.smi.VariableBinding;

/** Writes messages of SNMPv3 (RFC 3412, RFC 3414) of which our own engine is authoritative. One thread. */
final class UserWriter {

    private static final int MAX_MESSAGE = 65_507;
    private static final byte[] NOTHING = {};

    private final EngineIdentity own;
    private final LongSupplier nanos;
    private final long startedAt;
    private final Octets octets = new Octets();

    UserWriter(EngineIdentity own, LongSupplier nanos) {
        this.own = own;
        this.nanos = nanos;
        this.startedAt = nanos.getAsLong();
    }

    /** snmpEngineTime: seconds since our start. */
    int time() {
        return (int) Math.min(Integer.MAX_VALUE, (nanos.getAsLong() - startedAt) / 1_000_000_000L);
    }

    /** The Response to an inform: the same in everything but its type (RFC 3416 section 4.2.7). */
    static <T extends PDU> T response(PDU inform, T empty) {
        empty.setType(PDU.RESPONSE);
        empty.setRequestID(inform.getRequestID());
        empty.addAll(inform.getVariableBindings());
        return empty;
    }

    static byte[] encoded(PDU pdu) throws IOException {
        BEROutputStream out = new BEROutputStream(ByteBuffer.allocate(pdu.getBERLength()));
        pdu.encodeBER(out);
        return out.getBuffer().array();
    }

    /** A Report with one counter; signed where a seal is given. */
    byte[] report(UserMessage about, int requestId, OID counter, long count, Seal seal) throws IOException {
        ScopedPDU report = new ScopedPDU();
        report.setType(PDU.REPORT);
        report.setRequestID(new Integer32(requestId));
        report.setContextEngineID(new OctetString(own.id()));
        report.add(new VariableBinding(counter, new Counter32(count & 0xffff_ffffL)));
        return write(about, seal == null ? 0 : UserMessage.AUTH, seal, encoded(report));
    }

    byte[] answer(UserMessage about, ScopedPDU inform, Seal seal) throws IOException {
        ScopedPDU response = response(inform, new ScopedPDU());
        response.setContextEngineID(inform.getContextEngineID());
        response.setContextName(inform.getContextName());
        return write(about, about.flags() & (UserMessage.AUTH | UserMessage.PRIV), seal, encoded(response));
    }

    private byte[] write(UserMessage about, int flags, Seal seal, byte[] scoped) {
        boolean signed = (flags & UserMessage.AUTH) != 0;
        int now = time();
        byte[] salt = NOTHING;
        octets.clear();
        if ((flags & UserMessage.PRIV) != 0) {
            Seal.Encrypted encrypted = seal.encrypt(scoped, own.boots(), now);
            salt = encrypted.salt();
            octets.string(encrypted.octets());
        } else {
            octets.prepend(scoped);
        }
        int end = octets.length();
        int signatureFromEnd = octets.string(salt).length();
        octets.string(signed ? new byte[seal.signatureLength()] : NOTHING)
                .string(about.user())
                .integer(now)
                .integer(own.boots())
                .string(own.id())
                .wrap(0x30, end)
                .wrap(0x04, end);
        end = octets.length();
        byte[] message = octets.integer(3)
                .string(new byte[] {(byte) flags})
                .integer(MAX_MESSAGE)
                .integer(about.id())
                .wrap(0x30, end)
                .integer(3)
                .wrap(0x30, 0)
                .toArray();
        if (signed) {
            seal.sign(message, message.length - signatureFromEnd - seal.signatureLength());
        }
        return message;
    }
}
