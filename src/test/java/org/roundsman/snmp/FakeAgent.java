package org.roundsman.snmp;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.DatagramPacket;
import java.net.DatagramSocket;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.concurrent.ConcurrentSkipListMap;
import java.util.function.Supplier;
import org.snmp4j.PDU;
import org.snmp4j.PDUv1;
import org.snmp4j.asn1.BER;
import org.snmp4j.asn1.BERInputStream;
import org.snmp4j.asn1.BEROutputStream;
import org.snmp4j.smi.Integer32;
import org.snmp4j.smi.Null;
import org.snmp4j.smi.OID;
import org.snmp4j.smi.OctetString;
import org.snmp4j.smi.TimeTicks;
import org.snmp4j.smi.Variable;
import org.snmp4j.smi.VariableBinding;

/**
 * A hand-made SNMP v1 and v2c agent on a loopback address, honest by default; tests make it lie. Its objects are set by
 * the tests and are nobody's tables but theirs.
 */
final class FakeAgent implements AutoCloseable {

    /** What goes back for one request. */
    interface Manner {
        /** Replies to a request; the honest one is worked out when it is asked for. */
        List<byte[]> replies(PDU request, Supplier<PDU> honest, Encoding encoding);
    }

    /** Makes a message of a PDU. */
    interface Encoding {
        byte[] of(PDU pdu);
    }

    private static final Manner HONEST =
            (request, honest, encoding) -> Collections.singletonList(encoding.of(honest.get()));

    final NavigableMap<OID, Variable> objects = new ConcurrentSkipListMap<>();
    final List<PDU> heard = Collections.synchronizedList(new ArrayList<>());
    final List<Integer> replySizes = Collections.synchronizedList(new ArrayList<>());
    private final DatagramSocket socket;
    private final Thread thread;
    private volatile Manner manner = HONEST;
    /** Most variables in a reply, beyond which it says tooBig. */
    volatile int mostVariables = Integer.MAX_VALUE;

    FakeAgent() throws IOException {
        socket = new DatagramSocket(new InetSocketAddress(InetAddress.getByName("127.0.7.1"), 0));
        thread = new Thread(this::serve, "fake-agent");
        thread.setDaemon(true);
        thread.start();
    }

    FakeAgent with(String oid, Variable value) {
        objects.put(new OID(oid), value);
        return this;
    }

    /** The system group and the engine's scalars, as far as every device has them. */
    FakeAgent asDevice(String objectId) {
        return with("1.3.6.1.2.1.1.1.0", new OctetString("Invented device"))
                .with("1.3.6.1.2.1.1.2.0", new OID(objectId))
                .with("1.3.6.1.2.1.1.5.0", new OctetString("ap-1"))
                .with("1.3.6.1.6.3.10.2.1.2.0", new Integer32(7))
                .uptime(100_000);
    }

    FakeAgent uptime(long ticks) {
        return with("1.3.6.1.2.1.1.3.0", new TimeTicks(ticks));
    }

    FakeAgent behaving(Manner wanted) {
        manner = wanted;
        return this;
    }

    FakeAgent honest() {
        return behaving(HONEST);
    }

    Agent asV2() {
        return new Agent("127.0.7.1", socket.getLocalPort(), new SnmpAccess.Community(2, "lantern"));
    }

    Agent asV1() {
        return new Agent("127.0.7.1", socket.getLocalPort(), new SnmpAccess.Community(1, "lantern"));
    }

    private void serve() {
        byte[] buffer = new byte[65_535];
        while (!socket.isClosed()) {
            DatagramPacket packet = new DatagramPacket(buffer, buffer.length);
            try {
                socket.receive(packet);
                for (byte[] reply : replies(packet)) {
                    replySizes.add(reply.length);
                    socket.send(new DatagramPacket(reply, reply.length, packet.getSocketAddress()));
                }
            } catch (IOException e) {
                if (!socket.isClosed()) {
                    throw new UncheckedIOException(e);
                }
            }
        }
    }

    private List<byte[]> replies(DatagramPacket packet) throws IOException {
        return replies(java.util.Arrays.copyOf(packet.getData(), packet.getLength()));
    }

    /** The first reply to a message. */
    byte[] reply(byte[] request) throws IOException {
        return replies(request).get(0);
    }

    private List<byte[]> replies(byte[] message) throws IOException {
        BERInputStream in = new BERInputStream(ByteBuffer.wrap(message));
        BER.MutableByte tag = new BER.MutableByte();
        BER.decodeHeader(in, tag);
        int version = BER.decodeInteger(in, tag);
        byte[] community = BER.decodeString(in, tag);
        PDU request = version == 0 ? new PDUv1() : new PDU();
        request.decodeBER(in);
        heard.add(request);
        return manner.replies(request, () -> answer(request), pdu -> message(version, community, pdu));
    }

    static byte[] message(int version, byte[] community, PDU pdu) {
        try {
            OctetString name = new OctetString(community);
            Integer32 number = new Integer32(version);
            int length = pdu.getBERLength() + name.getBERLength() + number.getBERLength();
            BEROutputStream out = new BEROutputStream(ByteBuffer.allocate(length + 10));
            BER.encodeHeader(out, BER.SEQUENCE, length);
            number.encodeBER(out);
            name.encodeBER(out);
            pdu.encodeBER(out);
            ByteBuffer made = out.getBuffer().flip();
            byte[] octets = new byte[made.remaining()];
            made.get(octets);
            return octets;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private PDU answer(PDU request) {
        PDU reply = request instanceof PDUv1 ? new PDUv1() : new PDU();
        reply.setType(PDU.RESPONSE);
        reply.setRequestID(request.getRequestID());
        int repetitions = request.getType() == PDU.GETBULK ? request.getMaxRepetitions() : 1;
        List<OID> from = request.getVariableBindings().stream()
                .map(VariableBinding::getOid)
                .toList();
        for (int r = 0; r < repetitions; r++) {
            List<OID> next = new ArrayList<>();
            for (OID oid : from) {
                VariableBinding answered = request.getType() == PDU.GET ? get(oid) : successor(oid);
                reply.add(answered);
                next.add(answered.getOid());
                if (request instanceof PDUv1 && answered.isException()) {
                    return noSuchName(request, next.size());
                }
            }
            from = next;
        }
        if (reply.size() > mostVariables) {
            return tooBig(request);
        }
        return reply;
    }

    private VariableBinding get(OID oid) {
        Variable value = objects.get(oid);
        return new VariableBinding(oid, value == null ? Null.noSuchObject : value);
    }

    private VariableBinding successor(OID oid) {
        Map.Entry<OID, Variable> entry = objects.higherEntry(oid);
        return entry == null
                ? new VariableBinding(oid, Null.endOfMibView)
                : new VariableBinding(entry.getKey(), entry.getValue());
    }

    private static PDU noSuchName(PDU request, int index) {
        PDU reply = new PDUv1();
        reply.addAll(request.getVariableBindings());
        reply.setType(PDU.RESPONSE);
        reply.setRequestID(request.getRequestID());
        reply.setErrorStatus(PDU.noSuchName);
        reply.setErrorIndex(index);
        return reply;
    }

    private static PDU tooBig(PDU request) {
        PDU reply = new PDU();
        reply.setType(PDU.RESPONSE);
        reply.setRequestID(request.getRequestID());
        reply.setErrorStatus(PDU.tooBig);
        return reply;
    }

    @Override
    public void close() {
        socket.close();
    }
}
