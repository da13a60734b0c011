package org.roundsman.traps;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import io.micrometer.core.instrument.simple.SimpleMeterRegistry;
import java.io.IOException;
import java.net.DatagramPacket;
import java.net.DatagramSocket;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.ByteBuffer;
import java.time.Clock;
import java.time.Duration;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.locks.LockSupport;
import javax.sql.DataSource;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.measure.Outcome;
import org.roundsman.measure.Reading;
import org.roundsman.measure.Subject;
import org.roundsman.measure.Values;
import org.roundsman.polling.PollTarget;
import org.roundsman.polling.Rounds;
import org.roundsman.polling.RoundsSettings;
import org.roundsman.readings.ReadingsFixture;
import org.roundsman.snmp.Agent;
import org.roundsman.snmp.EngineIdentity;
import org.roundsman.snmp.NotificationLimits;
import org.roundsman.snmp.NotificationReceiver;
import org.roundsman.snmp.NotificationRefusal;
import org.roundsman.snmp.NotificationSender;
import org.roundsman.snmp.SnmpAccess;
import org.roundsman.snmp.Visit;
import org.roundsman.testing.TestDatabase;
import org.snmp4j.PDU;
import org.snmp4j.asn1.BEROutputStream;
import org.snmp4j.smi.Integer32;
import org.snmp4j.smi.OID;
import org.snmp4j.smi.TimeTicks;
import org.snmp4j.smi.VariableBinding;

/** A flood of 10,000 notifications a second: what is stored and remembered stays bounded, and rounds go on. */
class FloodDbTest {

    private static final int PER_SECOND = 10_000;
    private static final SnmpAccess COMMUNITY = new SnmpAccess.Community(2, "shore-read");

    private final Queue<Reading> readings = new ConcurrentLinkedQueue<>();
    private final Queue<NotificationReceived> told = new ConcurrentLinkedQueue<>();
    private final Map<InetAddress, List<NotificationSender>> senders = new ConcurrentHashMap<>();
    private final AtomicInteger sent = new AtomicInteger();
    private final StrangeSenders strangers = new StrangeSenders();
    private final SimpleMeterRegistry registry = new SimpleMeterRegistry();
    private ReadingsFixture fixture;
    private UnnamedNotifications unnamed;
    private Rounds rounds;
    private NoticeWriter writer;
    private NotificationReceiver receiver;
    private TrapsMeters meters;
    private long device;
    private volatile boolean wiringFails;

    @BeforeEach
    void start() throws IOException {
        DataSource database = TestDatabase.fresh("flood");
        fixture = new ReadingsFixture(database);
        device = fixture.accessPoint(fixture.site(fixture.customer("Brackwater"), "House", "Europe/Berlin"), "ap-1");
        Clock clock = Clock.systemUTC();
        rounds = new Rounds(
                (memory, kind) -> CompletableFuture.completedFuture(visit(clock)),
                readings::add,
                RoundsSettings.defaults(),
                clock,
                registry);
        rounds.watch(List.of(target(device, "192.0.2.1"), target(device + 1, "192.0.2.2")));
        Allowances allowances = new Allowances(30, Duration.ofSeconds(10), Duration.ofMinutes(10));
        unnamed = new UnnamedNotifications(database);
        meters = new TrapsMeters(registry);
        writer = new NoticeWriter(
                new NoticeWriter.Parts(database, allowances, unnamed, meters, this::ports), clock, notification -> {
                    told.add(notification);
                    rounds.soon(notification.deviceId(), Duration.ofSeconds(1));
                });
        Arrivals arrivals = new Arrivals(
                new NoticeWords(oid -> Optional.empty()),
                allowances,
                new Arrivals.Counted(unnamed, strangers, meters),
                writer,
                clock);
        writer.start();
        receiver = NotificationReceiver.open(
                new InetSocketAddress("127.0.0.1", 0),
                new EngineIdentity(HexFormat.of().parseHex("80007ed9050102030405060708"), 1),
                address -> senders.getOrDefault(address, List.of()),
                arrivals,
                new NotificationLimits(500, 200));
    }

    @AfterEach
    void stop() {
        receiver.close();
        writer.close();
        rounds.close();
    }

    private Map<Integer, String> ports(long of) {
        if (wiringFails) {
            throw new IllegalStateException("the wiring cannot be read");
        }
        return of == device ? Map.of(10_013, "port 13 (garden-ap-09)") : Map.of();
    }

    private static PollTarget target(long id, String host) {
        return new PollTarget(id, 1, new Agent(host, 161, COMMUNITY), Duration.ofSeconds(1));
    }

    private static Visit visit(Clock clock) {
        return new Visit(
                clock.instant(),
                Outcome.ANSWERED,
                Values.none(Subject.DEVICE),
                List.of(),
                List.of(),
                Optional.empty(),
                List.of(),
                false,
                1,
                0,
                List.of(),
                List.of());
    }

    /** A v2c trap (RFC 3416) whose request number and uptime differ from all others. */
    private static byte[] trap(String oid, int number, VariableBinding... more) throws IOException {
        PDU pdu = new PDU();
        pdu.setType(PDU.TRAP);
        pdu.setRequestID(new Integer32(number));
        pdu.add(new VariableBinding(new OID("1.3.6.1.2.1.1.3.0"), new TimeTicks(number)));
        pdu.add(new VariableBinding(new OID("1.3.6.1.6.3.1.1.4.1.0"), new OID(oid)));
        pdu.addAll(more);
        BEROutputStream out = new BEROutputStream(ByteBuffer.allocate(pdu.getBERLength()));
        pdu.encodeBER(out);
        byte[] body = out.getBuffer().array();
        byte[] head = HexFormat.of().parseHex("020101040a" + HexFormat.of().formatHex("shore-read".getBytes()));
        return ByteBuffer.allocate(2 + head.length + body.length)
                .put((byte) 0x30)
                .put((byte) (head.length + body.length))
                .put(head)
                .put(body)
                .array();
    }

    private void flood(String from, String oid, int messages) throws IOException {
        try (DatagramSocket socket = new DatagramSocket(new InetSocketAddress(from, 0))) {
            long begun = System.nanoTime();
            for (int i = 0; i < messages; i++) {
                byte[] message = trap(oid, sent.incrementAndGet());
                socket.send(new DatagramPacket(message, message.length, receiver.address()));
                long ahead = begun + i * (1_000_000_000L / PER_SECOND) - System.nanoTime();
                if (ahead > 1_000_000) {
                    LockSupport.parkNanos(ahead);
                }
            }
        }
    }

    @Test
    void aDeviceThatFloodsGetsABoundedTimelineAndTheRoundsGoOn() throws Exception {
        senders.put(
                InetAddress.getByName("127.0.8.1"),
                List.of(new NotificationSender(device, 1, COMMUNITY, List.of(), "")));
        Thread sender = new Thread(() -> {
            try {
                flood("127.0.8.1", "1.3.6.1.6.3.1.1.5.3", 3 * PER_SECOND);
            } catch (IOException e) {
                throw new java.io.UncheckedIOException(e);
            }
        });
        sender.start();
        await().until(() -> told.size() >= 30);
        int before = readings.size();
        await().until(() ->
                readings.stream().filter(r -> r.deviceId() == device + 1).count() >= 2
                        && readings.size() >= before + 2);
        sender.join();
        await().until(() -> meters.received.count() > 0 && writer.waiting() == 0);
        receiver.close();
        writer.close();
        // the burst, then one per ten seconds, then one event that sums the rest
        long events = fixture.count("device_event");
        assertThat(events).isBetween(31L, 40L);
        assertThat(fixture.rows("select title from device_event where title like '%more notifications%'"))
                .hasSize(1);
        double looked = meters.stored.count() + meters.summed.count();
        assertThat(meters.received.count()).isEqualTo(looked + meters.dropped.count());
        assertThat(meters.dropped.count()).isGreaterThan(meters.received.count() / 2);
        assertThat(meters.lost.count()).isZero();
        // out of turn: far fewer rounds than notifications
        assertThat(registry.find("roundsman.rounds.extra").counter().count()).isBetween(1.0, 10.0);
    }

    @Test
    void strangersFillNeitherDiskNorMemory() throws Exception {
        for (int i = 0; i < 2_500; i++) {
            flood("127.1." + i / 250 + "." + (1 + i % 250), "1.3.6.1.6.3.1.1.5.1", 3);
        }
        await().until(() -> meters.refused(NotificationRefusal.UNKNOWN_SENDER).count() >= 3_000);
        assertThat(strangers.size()).isLessThanOrEqualTo(StrangeSenders.KEPT);
        receiver.close();
        double counted = strangers.latest(5_000).stream()
                        .mapToLong(StrangeSenders.Line::messages)
                        .sum()
                + strangers.others();
        assertThat(counted)
                .isEqualTo(meters.refused(NotificationRefusal.UNKNOWN_SENDER).count());
        assertThat(strangers.others()).isPositive();
        assertThat(fixture.count("device_event")).isZero();
        assertThat(fixture.count("device_notification")).isZero();
    }

    @Test
    void notificationsWithoutANameAreCountedPerDevice() throws Exception {
        senders.put(
                InetAddress.getByName("127.0.8.1"),
                List.of(new NotificationSender(device, 1, COMMUNITY, List.of(), "")));
        flood("127.0.8.1", "1.3.6.1.4.1.32473.99.0.1", 200);
        await().until(() -> meters.unnamed.count() == 200);
        receiver.close();
        writer.close();
        assertThat(fixture.count("device_event")).isZero();
        UnnamedNotifications.Unnamed counted = unnamed.of(device).orElseThrow();
        assertThat(counted.count()).isEqualTo(200);
        assertThat(counted.lastOid()).isEqualTo("1.3.6.1.4.1.32473.99.0.1");
    }

    @Test
    void aNotificationIsToldAfterItIsStoredAndCausesARound() throws Exception {
        senders.put(
                InetAddress.getByName("127.0.8.1"),
                List.of(new NotificationSender(device, 1, COMMUNITY, List.of(), "")));
        flood("127.0.8.1", "1.3.6.1.6.3.1.1.5.1", 1);
        await().until(() -> !told.isEmpty());
        assertThat(told.peek().oid()).isEqualTo("1.3.6.1.6.3.1.1.5.1");
        assertThat(fixture.rows("select title, kind from device_event"))
                .containsExactly(List.of("Cold start", "NOTIFICATION"));
        await().until(() -> registry.find("roundsman.rounds.extra").counter().count() == 1);
    }

    /** linkDown with the ifIndex of an interface (IF-MIB, RFC 2863). */
    private void linkDown(int index) throws IOException {
        try (DatagramSocket socket = new DatagramSocket(new InetSocketAddress("127.0.8.1", 0))) {
            byte[] message = trap(
                    "1.3.6.1.6.3.1.1.5.3",
                    sent.incrementAndGet(),
                    new VariableBinding(new OID("1.3.6.1.2.1.2.2.1.1." + index), new Integer32(index)));
            socket.send(new DatagramPacket(message, message.length, receiver.address()));
        }
    }

    @Test
    void aLinkIsStoredWithThePortsNameAndWithItsNumberWhereNobodyKnowsIt() throws Exception {
        senders.put(
                InetAddress.getByName("127.0.8.1"),
                List.of(new NotificationSender(device, 1, COMMUNITY, List.of(), "")));
        linkDown(10_013);
        await().until(() -> told.size() == 1);
        linkDown(10_024);
        await().until(() -> told.size() == 2);
        wiringFails = true;
        linkDown(10_013);
        await().until(() -> told.size() == 3);
        assertThat(fixture.rows("select title from device_event order by id"))
                .containsExactly(
                        List.of("Link down: port 13 (garden-ap-09)"),
                        List.of("Link down: interface 10024"),
                        List.of("Link down: interface 10013"));
    }
}
