package org.roundsman.snmp.session;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import org.snmp4j.PDU;
import org.snmp4j.asn1.BEROutputStream;
import org.snmp4j.smi.OID;
import org.snmp4j.smi.VariableBinding;

/**
 * One Get, GetNext or GetBulk, encoded once and sent as often as wanted with a fresh request number. Immutable; safe
 * to share between threads and devices.
 */
public final class Request {

    private static final byte[] NULL = {0x05, 0x00};

    private final int type;
    private final List<OID> oids;
    private final int maxRepetitions;
    private final byte[] tail;

    private Request(int type, List<OID> oids, int nonRepeaters, int maxRepetitions) {
        this.type = type;
        this.oids = List.copyOf(oids);
        this.maxRepetitions = maxRepetitions;
        this.tail = encode(this.oids, nonRepeaters, maxRepetitions);
    }

    public static Request get(List<OID> oids) {
        return new Request(PDU.GET, oids, 0, 0);
    }

    public static Request getNext(List<OID> oids) {
        return new Request(PDU.GETNEXT, oids, 0, 0);
    }

    /** A GetBulk without non-repeaters. */
    public static Request getBulk(List<OID> oids, int maxRepetitions) {
        return new Request(PDU.GETBULK, oids, 0, maxRepetitions);
    }

    public List<OID> oids() {
        return oids;
    }

    /** The same request as the SNMP library has it, without a request number. */
    public PDU pdu() {
        PDU pdu = new PDU();
        pdu.setType(type);
        oids.forEach(oid -> pdu.add(new VariableBinding(oid)));
        if (type == PDU.GETBULK) {
            pdu.setNonRepeaters(0);
            pdu.setMaxRepetitions(maxRepetitions);
        }
        return pdu;
    }

    /** Octets that one variable with a NULL value takes in a request. */
    public static int size(OID oid) {
        return new VariableBinding(oid).getBERLength();
    }

    /** Writes the whole PDU in front of what is in the buffer. */
    void writeTo(Octets octets, int requestId) {
        int end = octets.length();
        octets.prepend(tail).integer(requestId).wrap(type & 0xff, end);
    }

    private static byte[] encode(List<OID> oids, int nonRepeaters, int maxRepetitions) {
        Octets octets = new Octets();
        for (int i = oids.size() - 1; i >= 0; i--) {
            int end = octets.length();
            octets.prepend(NULL).prepend(encoded(oids.get(i))).wrap(0x30, end);
        }
        return octets.wrap(0x30, 0)
                .integer(maxRepetitions)
                .integer(nonRepeaters)
                .toArray();
    }

    private static byte[] encoded(OID oid) {
        BEROutputStream out = new BEROutputStream(java.nio.ByteBuffer.allocate(oid.getBERLength()));
        try {
            oid.encodeBER(out);
        } catch (IOException e) {
            throw new UncheckedIOException("an object identifier that cannot be encoded: " + oid, e);
        }
        return out.getBuffer().array();
    }
}
