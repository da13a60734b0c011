package org.roundsman.snmp.notice;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.DatagramPacket;
import java.net.DatagramSocket;
import java.net.InetAddress;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import org.roundsman.snmp.EngineIdentity;
import org.roundsman.snmp.Notification;
import org.roundsman.snmp.NotificationListener;
import org.roundsman.snmp.NotificationRefusal;
import org.roundsman.snmp.NotificationSender;
import org.roundsman.snmp.SentByNetSnmp;
import org.roundsman.snmp.SnmpAccess;
import org.roundsman.snmp.SnmpAccess.AuthProtocol;
import org.roundsman.snmp.SnmpAccess.Level;
import org.roundsman.snmp.SnmpAccess.PrivProtocol;

/** Messages of net-snmp, caught from a socket and then sent again, late, or with octets changed. */
class IntakeTest {

    private static final InetAddress FROM = InetAddress.getLoopbackAddress();
    private static final long SECOND = 1_000_000_000L;
    private static final SnmpAccess USER = new SnmpAccess.User(
            "harbour", Level.AUTH_PRIV, AuthProtocol.SHA256, "signature-pass", PrivProtocol.AES128, "secrecy-pass");
    private static final SnmpAccess COMMUNITY = new SnmpAccess.Community(2, "shore-read");
    private static final List<String> V2C = List.of("-v", "2c", "-c", "shore-read", "-r", "0", "-t", "1");
    private static final List<String> V3 = List.of(
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
            "0x80007ed90407");

    private static List<byte[]> caught;

    private final AtomicLong nanos = new AtomicLong();
    private final List<Notification> heard = new ArrayList<>();
    private final List<NotificationRefusal> refused = new ArrayList<>();
    private int repeated;
    private boolean full;

    private final Intake intake = new Intake(
            new EngineIdentity(HexFormat.of().parseHex("80007ed9050102030405060708"), 3),
            address -> List.of(new NotificationSender(7, 1, COMMUNITY, List.of(USER), "")),
            new NotificationListener() {
                @Override
                public boolean take(Notification notification) {
                    return !full && heard.add(notification);
                }

                @Override
                public void refused(InetAddress from, int version, NotificationRefusal reason) {
                    refused.add(reason);
                }

                @Override
                public void repeated() {
                    repeated++;
                }
            },
            nanos::get);

    /** A v2c trap, a v2c inform, a v3 trap, and the first message of a v3 inform. */
    private static synchronized List<byte[]> caught() throws IOException {
        if (caught == null) {
            caught = List.of(
                    caught("snmptrap", V2C),
                    caught("snmpinform", V2C),
                    caught("snmptrap", V3),
                    caught("snmpinform", V3));
        }
        return caught;
    }

    private static byte[] caught(String tool, List<String> access) throws IOException {
        try (DatagramSocket socket = new DatagramSocket(0, InetAddress.getByName("127.0.0.1"))) {
            socket.setSoTimeout(20_000);
            Thread sender = new Thread(() ->
                    SentByNetSnmp.run(tool, "127.0.0.1", socket.getLocalPort(), access, "4711", "1.3.6.1.6.3.1.1.5.1"));
            sender.start();
            DatagramPacket packet = new DatagramPacket(new byte[2_000], 2_000);
            socket.receive(packet);
            return Arrays.copyOf(packet.getData(), packet.getLength());
        }
    }

    @Test
    void anInformThatComesAgainIsAnsweredAgainAndTakenOnce() throws IOException {
        byte[] first = intake.take(caught().get(1), FROM);
        byte[] second = intake.take(caught().get(1), FROM);
        assertThat(first).isNotNull().isEqualTo(second);
        assertThat(heard).hasSize(1);
        assertThat(repeated).isEqualTo(1);
    }

    @Test
    void anInformThatFindsNoPlaceIsNotAnsweredAndMayComeAgain() throws IOException {
        full = true;
        assertThat(intake.take(caught().get(1), FROM)).isNull();
        full = false;
        assertThat(intake.take(caught().get(1), FROM)).isNotNull();
        assertThat(heard).hasSize(1);
        assertThat(repeated).isZero();
    }

    /** After the time window of RFC 3414 (150 s) its clock betrays a replay, before that its content does. */
    @Test
    void aReplayOfASignedTrapIsNeverTaken() throws IOException {
        intake.take(caught().get(2), FROM);
        assertThat(heard).hasSize(1);
        for (long seconds : List.of(1L, 149L, 151L, 309L, 1_000L, 100_000L)) {
            nanos.set(seconds * SECOND);
            intake.take(caught().get(2), FROM);
        }
        assertThat(heard).hasSize(1);
        assertThat(repeated + refused.size()).isEqualTo(6);
        assertThat(refused).containsOnly(NotificationRefusal.TIME_WINDOW);
    }

    @Test
    void noOctetOfASignedTrapCanBeChanged() throws IOException {
        byte[] trap = caught().get(2);
        for (int i = 0; i < trap.length; i++) {
            byte[] changed = trap.clone();
            changed[i] ^= 0x11;
            intake.take(changed, FROM);
        }
        assertThat(heard).isEmpty();
        assertThat(refused).contains(NotificationRefusal.WRONG_DIGEST, NotificationRefusal.UNKNOWN_USER);
    }

    @Property(tries = 3_000)
    void whateverArrivesIsCountedOnceAndEndsNothing(@ForAll @Size(max = 400) byte[] noise) {
        int before = counted();
        intake.take(noise, FROM);
        assertThat(counted() - before).isEqualTo(1);
    }

    @Property(tries = 3_000)
    void damagedMessagesEndNothing(
            @ForAll @IntRange(max = 3) int which,
            @ForAll("places") List<Integer> places,
            @ForAll byte octet,
            @ForAll @IntRange(max = 300) int length)
            throws IOException {
        byte[] message = Arrays.copyOf(caught().get(which), Math.min(length + 20, caught().get(which).length));
        places.forEach(place -> message[place % message.length] = octet);
        int before = counted();
        intake.take(message, FROM);
        // a message that asks who we are is answered, and neither taken nor refused
        assertThat(counted() - before).isBetween(0, 1);
        // and it still works
        assertThat(intake.take(caught().get(1), FROM)).isNotNull();
    }

    private int counted() {
        return heard.size() + refused.size() + repeated;
    }

    @Provide
    net.jqwik.api.Arbitrary<List<Integer>> places() {
        return Arbitraries.integers().between(0, 400).list().ofMaxSize(6);
    }
}
