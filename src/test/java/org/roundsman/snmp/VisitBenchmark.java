package org.roundsman.snmp;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.ByteBuffer;
import java.nio.channels.DatagramChannel;
import java.nio.channels.SelectionKey;
import java.nio.channels.Selector;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Semaphore;
import java.util.concurrent.atomic.AtomicLong;
import org.roundsman.measure.Outcome;
import org.snmp4j.CommunityTarget;
import org.snmp4j.PDU;
import org.snmp4j.Snmp;
import org.snmp4j.event.ResponseEvent;
import org.snmp4j.event.ResponseListener;
import org.snmp4j.mp.SnmpConstants;
import org.snmp4j.smi.Address;
import org.snmp4j.smi.OID;
import org.snmp4j.smi.OctetString;
import org.snmp4j.smi.UdpAddress;
import org.snmp4j.smi.VariableBinding;
import org.snmp4j.transport.DefaultUdpTransportMapping;

/**
 * How many visits a second this package manages, and beside it, in the same run and against the same agents, how many
 * Gets a second a bare SNMP4J loop that only sends and counts. Not run by the tests. The agents may run in a process of
 * their own: {@code VisitBenchmark agents 400}, then {@code VisitBenchmark visits 400 10}.
 */
public final class VisitBenchmark {

    private static final int PORT = 26_161;
    private static final int IN_FLIGHT = 200;

    private VisitBenchmark() {}

    public static void main(String[] arguments) throws Exception {
        int agents = Integer.parseInt(arguments[1]);
        if (arguments[0].equals("agents")) {
            new AgentCrowd(agents).serve();
            return;
        }
        Duration time = Duration.ofSeconds(Long.parseLong(arguments[2]));
        visits(agents, time.dividedBy(2), false);
        visits(agents, time, true);
        bare(agents, time.dividedBy(2), false);
        bare(agents, time, true);
        visits(agents, time, true);
    }

    private static String host(int agent) {
        return "127.8." + agent / 250 + "." + (agent % 250 + 1);
    }

    private static void visits(int agents, Duration time, boolean print) throws Exception {
        SnmpSettings settings = new SnmpSettings(Duration.ofSeconds(2), 1, Duration.ofHours(1), 20_000, 2);
        try (SnmpVisitor visitor = SnmpVisitor.open(settings, ProfileSet.load(List.of()), Clock.systemUTC())) {
            List<DeviceMemory> devices = new ArrayList<>();
            for (int i = 0; i < agents; i++) {
                devices.add(new DeviceMemory(new Agent(host(i), PORT, new SnmpAccess.Community(2, "lantern"))));
            }
            Count survey = new Count();
            for (DeviceMemory device : devices) {
                visitor.visit(device, VisitKind.ROUND)
                        .thenAccept(visit -> survey.take(visit.outcome(), visit.requests()));
            }
            while (survey.ended.get() < agents) {
                Thread.onSpinWait();
            }
            if (print) {
                System.gc();
                Runtime runtime = Runtime.getRuntime();
                System.out.printf(
                        "heap after a full collection: %d MB for %d devices%n",
                        (runtime.totalMemory() - runtime.freeMemory()) >> 20, agents);
            }
            run("visits", time, print, agents, (agent, count, done) -> visitor.visit(
                            devices.get(agent), VisitKind.ROUND)
                    .thenAccept(visit -> {
                        count.take(visit.outcome(), visit.requests());
                        done.run();
                    }));
        }
    }

    private static void bare(int agents, Duration time, boolean print) throws Exception {
        Snmp snmp = new Snmp(new DefaultUdpTransportMapping(new UdpAddress(0)));
        snmp.getMessageDispatcher().addMessageProcessingModel(new org.snmp4j.mp.MPv2c());
        snmp.listen();
        List<CommunityTarget<Address>> targets = new ArrayList<>();
        for (int i = 0; i < agents; i++) {
            CommunityTarget<Address> target =
                    new CommunityTarget<>(new UdpAddress(host(i) + "/" + PORT), new OctetString("lantern"));
            target.setVersion(SnmpConstants.version2c);
            target.setTimeout(2_000);
            targets.add(target);
        }
        List<VariableBinding> wanted = AgentCrowd.objects().keySet().stream()
                .limit(45)
                .map(VariableBinding::new)
                .toList();
        run("bare Gets of 45 variables", time, print, agents, (agent, count, done) -> {
            ResponseListener listener = new ResponseListener() {
                @Override
                public <A extends Address> void onResponse(ResponseEvent<A> event) {
                    ((Snmp) event.getSource()).cancel(event.getRequest(), this);
                    count.take(event.getResponse() == null ? Outcome.NO_REPLY : Outcome.ANSWERED, 1);
                    done.run();
                }
            };
            try {
                snmp.send(new PDU(PDU.GET, wanted), targets.get(agent), null, listener);
            } catch (IOException e) {
                throw new java.io.UncheckedIOException(e);
            }
        });
        snmp.close();
    }

    private interface Work {
        void begin(int agent, Count count, Runnable done);
    }

    private static final class Count {
        final AtomicLong ended = new AtomicLong();
        final AtomicLong failed = new AtomicLong();
        final AtomicLong requests = new AtomicLong();

        void take(Outcome outcome, int sent) {
            requests.addAndGet(sent);
            if (outcome != Outcome.ANSWERED) {
                failed.incrementAndGet();
            }
            ended.incrementAndGet();
        }
    }

    private static void run(String name, Duration time, boolean print, int agents, Work work) throws Exception {
        Semaphore room = new Semaphore(Math.min(IN_FLIGHT, agents / 2));
        Count count = new Count();
        long cpuBefore = cpuNanos();
        long begun = System.nanoTime();
        for (int i = 0; System.nanoTime() - begun < time.toNanos(); i++) {
            room.acquire();
            work.begin(i % agents, count, room::release);
        }
        double seconds = (System.nanoTime() - begun) / 1e9;
        if (print) {
            long ended = count.ended.get();
            System.out.printf(
                    "%-26s %8.0f/s  %8.0f requests/s  %6.1f us CPU each  %d failed%n",
                    name,
                    ended / seconds,
                    count.requests.get() / seconds,
                    (cpuNanos() - cpuBefore) / 1e3 / ended,
                    count.failed.get());
        }
    }

    private static long cpuNanos() {
        return ((com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean())
                .getProcessCpuTime();
    }

    /** Many agents with the same objects, on one thread, answering by cutting and pasting octets. */
    private static final class AgentCrowd {

        private final Selector selector = Selector.open();
        private final Map<String, byte[]> known = new HashMap<>();
        private final FakeAgent model = new FakeAgent();

        AgentCrowd(int agents) throws IOException {
            objects().forEach(model.objects::put);
            for (int i = 0; i < agents; i++) {
                DatagramChannel channel = DatagramChannel.open();
                channel.bind(new InetSocketAddress(InetAddress.getByName(host(i)), PORT));
                channel.configureBlocking(false);
                channel.register(selector, SelectionKey.OP_READ);
            }
        }

        static Map<OID, org.snmp4j.smi.Variable> objects() {
            return DemoDevice.objects(3, 2);
        }

        void serve() throws IOException {
            System.out.println("ready");
            ByteBuffer buffer = ByteBuffer.allocateDirect(65_535);
            while (true) {
                selector.select(key -> answer((DatagramChannel) key.channel(), buffer));
            }
        }

        private void answer(DatagramChannel channel, ByteBuffer buffer) {
            try {
                buffer.clear();
                java.net.SocketAddress from = channel.receive(buffer);
                if (from != null) {
                    byte[] request = new byte[buffer.flip().remaining()];
                    buffer.get(request);
                    channel.send(ByteBuffer.wrap(reply(request)), from);
                }
            } catch (IOException e) {
                throw new java.io.UncheckedIOException(e);
            }
        }

        /** The request number stands at the same place in requests that are alike, and so it does in their replies. */
        private byte[] reply(byte[] request) throws IOException {
            int at = numberAt(request);
            byte[] number = java.util.Arrays.copyOfRange(request, at, at + 4);
            java.util.Arrays.fill(request, at, at + 4, (byte) 1);
            String key = new String(request, java.nio.charset.StandardCharsets.ISO_8859_1);
            byte[] reply = known.get(key);
            if (reply == null) {
                reply = model.reply(request);
                known.put(key, reply);
            }
            byte[] made = reply.clone();
            System.arraycopy(number, 0, made, numberAt(made), 4);
            return made;
        }

        private static int numberAt(byte[] message) {
            int at = message[1] >= 0 ? 2 : 2 + (message[1] & 0x7f);
            at += 3;
            at += 2 + message[at + 1];
            at += message[at + 1] >= 0 ? 2 : 2 + (message[at + 1] & 0x7f);
            return at + 2;
        }
    }
}
