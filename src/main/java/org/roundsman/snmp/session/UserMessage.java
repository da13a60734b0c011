package org.roundsman.snmp.session;

import java.io.IOException;
import java.nio.ByteBuffer;
import org.snmp4j.ScopedPDU;
import org.snmp4j.asn1.BER;
import org.snmp4j.asn1.BERInputStream;

/**
 * The layers of one received SNMPv3 message (RFC 3412 section 6, RFC 3414 section 2.4).
 *
 * @param id msgID
 * @param signatureAt where the signature's octets stand in the message
 * @param data the scoped PDU, encrypted when the flags say so
 */
public record UserMessage(
        int id,
        int flags,
        byte[] engineId,
        int boots,
        int time,
        byte[] user,
        int signatureAt,
        int signatureLength,
        byte[] salt,
        byte[] data) {

    public static final int AUTH = 1;
    public static final int PRIV = 2;
    public static final int REPORTABLE = 4;

    public boolean signed() {
        return (flags & AUTH) != 0;
    }

    public boolean encrypted() {
        return (flags & PRIV) != 0;
    }

    /** Takes a message apart without believing any of it. */
    public static UserMessage read(byte[] datagram) throws IOException {
        BERInputStream in = new BERInputStream(ByteBuffer.wrap(datagram));
        BER.MutableByte tag = new BER.MutableByte();
        BER.decodeHeader(in, tag);
        BER.decodeInteger(in, tag);
        BER.decodeHeader(in, tag);
        int id = BER.decodeInteger(in, tag);
        BER.decodeInteger(in, tag);
        byte[] flags = BER.decodeString(in, tag);
        BER.decodeInteger(in, tag);
        BER.decodeHeader(in, tag);
        BER.decodeHeader(in, tag);
        byte[] engineId = BER.decodeString(in, tag);
        int boots = BER.decodeInteger(in, tag);
        int time = BER.decodeInteger(in, tag);
        byte[] user = BER.decodeString(in, tag);
        byte[] signature = BER.decodeString(in, tag);
        int signatureAt = (int) in.getPosition() - signature.length;
        byte[] salt = BER.decodeString(in, tag);
        if (flags.length != 1) {
            throw new IOException("message flags of " + flags.length + " octets");
        }
        byte[] data = (flags[0] & PRIV) != 0 ? BER.decodeString(in, tag) : rest(datagram, (int) in.getPosition());
        return new UserMessage(id, flags[0], engineId, boots, time, user, signatureAt, signature.length, salt, data);
    }

    /** Reads decrypted or plain data. */
    public static ScopedPDU scopedPdu(byte[] plain) throws IOException {
        ScopedPDU pdu = new ScopedPDU();
        pdu.decodeBER(new BERInputStream(ByteBuffer.wrap(plain)));
        return pdu;
    }

    private static byte[] rest(byte[] datagram, int from) {
        return java.util.Arrays.copyOfRange(datagram, from, datagram.length);
    }
}
