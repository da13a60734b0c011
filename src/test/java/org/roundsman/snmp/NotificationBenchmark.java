package org.roundsman.snmp;

import java.io.IOException;
import java.net.DatagramPacket;
import java.net.DatagramSocket;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.ByteBuffer;
import java.nio.channels.ClosedChannelException;
import java.nio.channels.DatagramChannel;
import java.time.Duration;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicLong;
import org.roundsman.snmp.SnmpAccess.AuthProtocol;
import org.roundsman.snmp.SnmpAccess.Level;
import org.roundsman.snmp.SnmpAccess.PrivProtocol;

/**
 * How many notifications a second the receiver handles, and beside it, in the same run and from the same sender, how many
 * datagrams a bare loop receives. The messages are one of net-snmp, sent again and again: each is read, let in and then
 * found to be a repeat. Not run by the tests.
 */
public final class NotificationBenchmark {

    private static final SnmpAccess COMMUNITY = new SnmpAccess.Community(2, "shore-read");
    private static final SnmpAccess USER = new SnmpAccess.User(
            "harbour", Level.AUTH_PRIV, AuthProtocol.SHA256, "signature-pass", PrivProtocol.AES128, "secrecy-pass");

    private NotificationBenchmark() {}

    public static void main(String[] arguments) throws Exception {
        Duration time = Duration.ofSeconds(Long.parseLong(arguments[0]));
        byte[] open = caught(List.of("-v", "2c", "-c", "shore-read"));
        byte[] sealed = caught(List.of(
                "-v",
                "3",
                "-u",
                "harbour",
                "-l",
                "authPriv",
                "-a",
                "SHA-256",
                "-A",
                "signature-pass",
                "-x",
                "AES",
                "-X",
                "secrecy-pass",
                "-e",
                "0x80007ed90407"));
        for (int round = 1; round <= 3; round++) {
            double bare = bare(open, time);
            double v2c = handled(open, time, true);
            double v3 = handled(sealed, time, true);
            double strangers = handled(open, time, false);
            System.out.printf(
                    "round %d: bare %,.0f/s; v2c %,.0f/s (%.2f of bare); v3 SHA-256 AES-128 %,.0f/s (%.2f);"
                            + " strangers %,.0f/s (%.2f)%n",
                    round, bare, v2c, v2c / bare, v3, v3 / bare, strangers, strangers / bare);
        }
    }

    private static byte[] caught(List<String> access) throws IOException {
        try (DatagramSocket socket = new DatagramSocket(0, InetAddress.getByName("127.0.0.1"))) {
            new Thread(() -> SentByNetSnmp.run(
                            "snmptrap",
                            "127.0.0.1",
                            socket.getLocalPort(),
                            access,
                            "4711",
                            "1.3.6.1.6.3.1.1.5.3",
                            "1.3.6.1.2.1.2.2.1.1.2",
                            "i",
                            "2"))
                    .start();
            DatagramPacket packet = new DatagramPacket(new byte[2_000], 2_000);
            socket.receive(packet);
            return Arrays.copyOf(packet.getData(), packet.getLength());
        }
    }

    private static double bare(byte[] message, Duration time) throws Exception {
        AtomicLong count = new AtomicLong();
        try (DatagramChannel channel = DatagramChannel.open().bind(new InetSocketAddress("127.0.0.1", 0))) {
            Thread loop = new Thread(() -> {
                ByteBuffer buffer = ByteBuffer.allocateDirect(65_535);
                try {
                    while (true) {
                        channel.receive(buffer.clear());
                        count.incrementAndGet();
                    }
                } catch (ClosedChannelException e) {
                    // the end of the measurement
                } catch (IOException e) {
                    throw new java.io.UncheckedIOException(e);
                }
            });
            loop.start();
            return perSecond(message, (InetSocketAddress) channel.getLocalAddress(), time, count);
        }
    }

    private static double handled(byte[] message, Duration time, boolean known) throws Exception {
        AtomicLong count = new AtomicLong();
        NotificationSender sender = new NotificationSender(7, 1, COMMUNITY, List.of(USER), "");
        NotificationListener listener = new NotificationListener() {
            @Override
            public boolean take(Notification notification) {
                count.incrementAndGet();
                return true;
            }

            @Override
            public void repeated() {
                count.incrementAndGet();
            }

            @Override
            public void refused(InetAddress from, int version, NotificationRefusal reason) {
                if (!known) {
                    count.incrementAndGet();
                }
            }
        };
        try (NotificationReceiver receiver = NotificationReceiver.open(
                new InetSocketAddress("127.0.0.1", 0),
                new EngineIdentity(HexFormat.of().parseHex("80007ed9050102030405060708"), 1),
                address -> known ? List.of(sender) : List.of(),
                listener,
                new NotificationLimits(Integer.MAX_VALUE, Integer.MAX_VALUE))) {
            return perSecond(message, receiver.address(), time, count);
        }
    }

    private static double perSecond(byte[] message, InetSocketAddress to, Duration time, AtomicLong count)
            throws Exception {
        AtomicBoolean going = new AtomicBoolean(true);
        Thread sender = new Thread(() -> {
            try (DatagramSocket socket = new DatagramSocket(0, InetAddress.getByName("127.0.0.1"))) {
                while (going.get()) {
                    socket.send(new DatagramPacket(message, message.length, to));
                }
            } catch (IOException e) {
                throw new java.io.UncheckedIOException(e);
            }
        });
        sender.start();
        Thread.sleep(time.toMillis() / 2);
        long before = count.get();
        long begun = System.nanoTime();
        Thread.sleep(time.toMillis());
        double rate = (count.get() - before) * 1e9 / (System.nanoTime() - begun);
        going.set(false);
        sender.join();
        return rate;
    }
}
