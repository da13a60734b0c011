package org.roundsman.snmp.session;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import org.roundsman.measure.Outcome;
import org.roundsman.snmp.SnmpAccess;
import org.snmp4j.PDU;
import org.snmp4j.PDUv1;
import org.snmp4j.asn1.BER;
import org.snmp4j.asn1.BERInputStream;

/** SNMP v1 (RFC 1157) and v2c (RFC 1901): version, community, PDU. */
final class CommunityDialect implements Dialect {

    private final int version;
    private final byte[] community;
    private final Octets octets = new Octets();

    CommunityDialect(SnmpAccess.Community access) {
        this.version = access.version() - 1;
        this.community = access.community().getBytes(StandardCharsets.UTF_8);
    }

    @Override
    public byte[] encode(Request request, int id, boolean open) {
        octets.clear();
        request.writeTo(octets, id);
        return octets.string(community).integer(version).wrap(0x30, 0).toArray();
    }

    @Override
    public Verdict decode(byte[] datagram, boolean open) throws IOException {
        BERInputStream in = new BERInputStream(ByteBuffer.wrap(datagram));
        BER.MutableByte tag = new BER.MutableByte();
        BER.decodeHeader(in, tag);
        if (BER.decodeInteger(in, tag) != version) {
            return new Verdict.Refused(Outcome.VERSION_UNSUPPORTED);
        }
        BER.decodeString(in, tag);
        PDU pdu = version == 0 ? new PDUv1() : new PDU();
        pdu.decodeBER(in);
        if (pdu.getType() != PDU.RESPONSE) {
            return new Verdict.Unusable("a message that is no response was ignored");
        }
        return new Verdict.Answer(pdu);
    }
}
