package org.roundsman.demo.agent;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.InetSocketAddress;
import java.nio.ByteBuffer;
import java.nio.channels.DatagramChannel;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import org.roundsman.demo.AgentHost;
import org.roundsman.demo.DemoCredential;
import org.roundsman.demo.DemoDevice;
import org.roundsman.demo.DemoFleet;
import org.roundsman.demo.Faults;
import org.snmp4j.PDU;
import org.snmp4j.asn1.BEROutputStream;
import org.snmp4j.smi.Integer32;
import org.snmp4j.smi.OID;
import org.snmp4j.smi.OctetString;
import org.snmp4j.smi.VariableBinding;

/**
 * What one request of 20 variables costs, without and with sockets. Not run by the tests. Options: access points (260),
 * seconds (5).
 */
public final class AgentBenchmark {

    private static final String RADIO = "1.3.6.1.4.1.32473.2.3.1.1.";
    private static final int SEQUENCE = 0x30;

    private AgentBenchmark() {}

    public static void main(String[] args) throws Exception {
        int accessPoints = args.length > 0 ? Integer.parseInt(args[0]) : 260;
        int seconds = args.length > 1 ? Integer.parseInt(args[1]) : 5;
        DemoFleet fleet = DemoFleet.of(accessPoints, DemoFleet.USUAL_SEED, 26_161);
        Clock clock = Clock.systemUTC();
        Faults faults = new Faults(fleet, clock);
        List<DemoDevice> asked = fleet.devices().stream()
                .filter(d -> d.isAccessPoint() && d.accepts() instanceof DemoCredential.Community)
                .toList();
        conversation(fleet, faults, asked, seconds);
        sockets(fleet, faults, asked, seconds);
    }

    private static void conversation(DemoFleet fleet, Faults faults, List<DemoDevice> asked, int seconds)
            throws IOException {
        ShapeBook shapes = new ShapeBook();
        List<AgentState> agents = new ArrayList<>();
        for (DemoDevice device : asked) {
            agents.add(new AgentState(fleet, device, faults));
        }
        Conversation conversation = new Conversation();
        long now = System.currentTimeMillis();
        // twice: the first turn warms up, and brings every agent's counters to the present
        for (int turn = 0; turn < 2; turn++) {
            long asks = 0;
            long answered = 0;
            long start = System.nanoTime();
            while (System.nanoTime() - start < seconds * 1_000_000_000L) {
                for (AgentState agent : agents) {
                    byte[] request = request(agent.device);
                    asks++;
                    Shape shape = shapes.of(fleet.siteOf(agent.device), agent.device);
                    if (agent.look(now + asks * 10) && conversation.hear(agent, shape, request, request.length)) {
                        answered++;
                    }
                }
            }
            double micros = (System.nanoTime() - start) / 1e3 / asks;
            System.out.printf(
                    "conversation: %d asked, %d answered, %.2f us each, encoding of the request included%n",
                    asks, answered, micros);
        }
    }

    private static void sockets(DemoFleet fleet, Faults faults, List<DemoDevice> asked, int seconds) throws Exception {
        try (AgentHost host = AgentHost.start(fleet, faults, Clock.systemUTC());
                DatagramChannel channel = DatagramChannel.open()) {
            channel.bind(new InetSocketAddress("127.0.0.1", 0));
            channel.socket().setSoTimeout(1000);
            channel.configureBlocking(false);
            List<ByteBuffer> requests = new ArrayList<>();
            List<InetSocketAddress> targets = new ArrayList<>();
            for (DemoDevice device : asked) {
                requests.add(ByteBuffer.wrap(request(device)));
                targets.add(new InetSocketAddress(device.host(), device.port()));
            }
            for (int turn = 0; turn < 2; turn++) {
                flood(host, channel, requests, targets, seconds);
            }
        }
    }

    /** Keeps a small number of requests on the way. */
    private static void flood(
            AgentHost host,
            DatagramChannel channel,
            List<ByteBuffer> requests,
            List<InetSocketAddress> targets,
            int seconds)
            throws IOException {
        ByteBuffer reply = ByteBuffer.allocateDirect(4096);
        long before = host.answers();
        long cpuBefore = agentsCpu();
        long start = System.nanoTime();
        long sent = 0;
        long octets = 0;
        while (System.nanoTime() - start < seconds * 1_000_000_000L) {
            for (int i = 0; i < 16; i++) {
                int next = (int) (sent++ % requests.size());
                channel.send(requests.get(next).duplicate(), targets.get(next));
            }
            long quiet = System.nanoTime();
            int got = 0;
            while (got < 16 && System.nanoTime() - quiet < 2_000_000) {
                reply.clear();
                if (channel.receive(reply) != null) {
                    octets = reply.position();
                    got++;
                }
            }
        }
        long answered = host.answers() - before;
        double elapsed = (System.nanoTime() - start) / 1e9;
        System.out.printf(
                "sockets: %.0f answers/s, %.2f us CPU of the agents each, last reply %d octets%n",
                answered / elapsed, (agentsCpu() - cpuBefore) / 1e3 / answered, octets);
    }

    private static long agentsCpu() {
        var threads = java.lang.management.ManagementFactory.getThreadMXBean();
        long sum = 0;
        for (var info : threads.dumpAllThreads(false, false)) {
            if (info.getThreadName().startsWith("invented-agents")) {
                sum += threads.getThreadCpuTime(info.getThreadId());
            }
        }
        return sum;
    }

    /** A v2c Get of 20 variables, written by SNMP4J. */
    static byte[] request(DemoDevice device) throws IOException {
        PDU pdu = new PDU();
        pdu.setType(PDU.GET);
        pdu.setRequestID(new Integer32(4711));
        for (String name : names(device)) {
            pdu.add(new VariableBinding(new OID(name)));
        }
        DemoCredential.Community credential = (DemoCredential.Community) device.accepts();
        ByteArrayOutputStream body = new ByteArrayOutputStream();
        new Integer32(1).encodeBER(body);
        new OctetString(credential.community()).encodeBER(body);
        BEROutputStream encoded = new BEROutputStream(ByteBuffer.allocate(pdu.getBERLength()));
        pdu.encodeBER(encoded);
        body.write(encoded.getBuffer().array());
        ByteArrayOutputStream message = new ByteArrayOutputStream();
        org.snmp4j.asn1.BER.encodeHeader(message, SEQUENCE, body.size());
        body.writeTo(message);
        return message.toByteArray();
    }

    private static List<String> names(DemoDevice device) {
        List<String> names = new ArrayList<>(List.of(
                "1.3.6.1.2.1.1.3.0",
                "1.3.6.1.2.1.31.1.1.1.6.1",
                "1.3.6.1.2.1.31.1.1.1.10.1",
                "1.3.6.1.2.1.31.1.1.1.15.1",
                "1.3.6.1.4.1.32473.2.2.1.0",
                "1.3.6.1.4.1.32473.2.2.2.0"));
        int radios = device.radios().size();
        for (int column = 3; names.size() < 20; column = column == 12 ? 3 : column + 1) {
            names.add(RADIO + column + "." + (1 + names.size() % radios));
        }
        return names;
    }
}
