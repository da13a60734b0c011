package org.roundsman.discovery;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetSocketAddress;
import java.nio.ByteBuffer;
import java.nio.channels.DatagramChannel;
import java.nio.channels.SelectionKey;
import java.nio.channels.Selector;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
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

/** Many small SNMP v1 and v2c agents, each at a loopback address of its own, all on one port and one thread. */
public final class Neighbourhood implements AutoCloseable {

    /** One agent. */
    public static final class House {
        final int version;
        final String community;
        final NavigableMap<OID, Variable> objects = new TreeMap<>();
        volatile boolean dark;

        House(int version, String community) {
            this.version = version;
            this.community = community;
        }

        House with(String oid, Variable value) {
            objects.put(new OID(oid), value);
            return this;
        }
    }

    private final Selector selector = Selector.open();
    private final Map<String, House> houses = new ConcurrentHashMap<>();
    private final int port;
    private final Thread thread;
    private volatile boolean open = true;

    public Neighbourhood() throws IOException {
        try (DatagramChannel probe = DatagramChannel.open()) {
            probe.bind(new InetSocketAddress("127.0.7.9", 0));
            port = ((InetSocketAddress) probe.getLocalAddress()).getPort();
        }
        thread = new Thread(this::serve, "neighbourhood");
        thread.setDaemon(true);
        thread.start();
    }

    public int port() {
        return port;
    }

    /** An invented access point: enterprise 32473 (RFC 5612), with chassis row of ENTITY-MIB (RFC 6933). */
    public House house(String host, int version, String community, int number) throws IOException {
        House house = new House(version, community)
                .with("1.3.6.1.2.1.1.1.0", new OctetString("Invented access point"))
                .with("1.3.6.1.2.1.1.2.0", new OID("1.3.6.1.4.1.32473.1.2"))
                .with("1.3.6.1.2.1.1.3.0", new TimeTicks(100_000L + 5_000L * number))
                .with("1.3.6.1.2.1.1.5.0", new OctetString("ap-" + number + ".pier.example"))
                .with("1.3.6.1.2.1.1.6.0", new OctetString("Pier " + number));
        String chassis = "1.3.6.1.2.1.47.1.1.1.1.";
        house.with(chassis + "5.1", new Integer32(3))
                .with(chassis + "10.1", new OctetString("6.4.2"))
                .with(chassis + "11.1", new OctetString("TR22-" + (10_000 + number)))
                .with(chassis + "12.1", new OctetString("Tamarack Radio"))
                .with(chassis + "13.1", new OctetString("TR-22"));
        put(host, house);
        return house;
    }

    public void put(String host, House house) throws IOException {
        if (houses.put(host, house) == null) {
            DatagramChannel channel = DatagramChannel.open();
            channel.bind(new InetSocketAddress(host, port));
            channel.configureBlocking(false);
            channel.register(selector, SelectionKey.OP_READ, host);
            selector.wakeup();
        }
    }

    public House at(String host) {
        return houses.get(host);
    }

    private void serve() {
        ByteBuffer buffer = ByteBuffer.allocate(65_535);
        while (open) {
            try {
                selector.select(
                        key -> {
                            try {
                                answer(key, buffer);
                            } catch (IOException e) {
                                throw new UncheckedIOException(e);
                            }
                        },
                        200);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }

    private void answer(SelectionKey key, ByteBuffer buffer) throws IOException {
        DatagramChannel channel = (DatagramChannel) key.channel();
        for (var from = channel.receive(buffer.clear()); from != null; from = channel.receive(buffer.clear())) {
            byte[] request = new byte[buffer.flip().remaining()];
            buffer.get(request);
            House house = houses.get((String) key.attachment());
            byte[] reply = house.dark ? null : reply(house, request);
            if (reply != null) {
                channel.send(ByteBuffer.wrap(reply), from);
            }
        }
    }

    private static byte[] reply(House house, byte[] message) throws IOException {
        BERInputStream in = new BERInputStream(ByteBuffer.wrap(message));
        BER.MutableByte tag = new BER.MutableByte();
        BER.decodeHeader(in, tag);
        int version = BER.decodeInteger(in, tag);
        if (version != house.version - 1) {
            return null;
        }
        OctetString community = new OctetString(BER.decodeString(in, tag));
        if (!community.toString().equals(house.community)) {
            return null;
        }
        PDU request = version == 0 ? new PDUv1() : new PDU();
        request.decodeBER(in);
        PDU reply = work(house, request);
        Integer32 number = new Integer32(version);
        int length = reply.getBERLength() + community.getBERLength() + number.getBERLength();
        BEROutputStream out = new BEROutputStream(ByteBuffer.allocate(length + 10));
        BER.encodeHeader(out, BER.SEQUENCE, length);
        number.encodeBER(out);
        community.encodeBER(out);
        reply.encodeBER(out);
        ByteBuffer made = out.getBuffer().flip();
        byte[] octets = new byte[made.remaining()];
        made.get(octets);
        return octets;
    }

    private static PDU work(House house, PDU request) {
        boolean old = request instanceof PDUv1;
        PDU reply = old ? new PDUv1() : new PDU();
        reply.setType(PDU.RESPONSE);
        reply.setRequestID(request.getRequestID());
        int repetitions = request.getType() == PDU.GETBULK ? request.getMaxRepetitions() : 1;
        var from = request.getVariableBindings().stream()
                .map(VariableBinding::getOid)
                .toList();
        for (int r = 0; r < repetitions; r++) {
            var next = new java.util.ArrayList<OID>();
            for (OID oid : from) {
                VariableBinding one = value(house, request.getType() == PDU.GET, oid);
                if (old && one.isException()) {
                    return noSuchName(request, next.size() + 1);
                }
                reply.add(one);
                next.add(one.getOid());
            }
            from = next;
        }
        return reply;
    }

    /** RFC 1157 section 4.1.2: the request comes back as it was, with the place of the name that is not there. */
    private static PDU noSuchName(PDU request, int index) {
        PDU reply = new PDUv1();
        reply.setType(PDU.RESPONSE);
        reply.setRequestID(request.getRequestID());
        reply.addAll(request.getVariableBindings());
        reply.setErrorStatus(PDU.noSuchName);
        reply.setErrorIndex(index);
        return reply;
    }

    private static VariableBinding value(House house, boolean get, OID oid) {
        if (get) {
            Variable value = house.objects.get(oid);
            return new VariableBinding(oid, value == null ? Null.noSuchObject : value);
        }
        Map.Entry<OID, Variable> next = house.objects.higherEntry(oid);
        return next == null
                ? new VariableBinding(oid, Null.endOfMibView)
                : new VariableBinding(next.getKey(), next.getValue());
    }

    @Override
    public void close() throws IOException {
        open = false;
        selector.wakeup();
        try {
            thread.join(5_000);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        for (SelectionKey key : selector.keys()) {
            key.channel().close();
        }
        selector.close();
    }
}
