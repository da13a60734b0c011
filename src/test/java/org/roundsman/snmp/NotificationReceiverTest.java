package org.roundsman.snmp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Queue;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.roundsman.snmp.SnmpAccess.AuthProtocol;
import org.roundsman.snmp.SnmpAccess.Level;
import org.roundsman.snmp.SnmpAccess.PrivProtocol;

/**
 * The receiver against snmptrap and snmpinform of net-snmp. An inform that ends with 0 got an answer that net-snmp checked:
 * number, user, signature and encryption.
 */
class NotificationReceiverTest {

    private static final String FROM = "127.0.7.1";
    private static final String ENGINE = "80007ed90407";
    private static final String LINK_DOWN = "1.3.6.1.6.3.1.1.5.3";
    private static final EngineIdentity OWN =
            new EngineIdentity(HexFormat.of().parseHex("80007ed9050102030405060708"), 3);

    private final Queue<Notification> heard = new ConcurrentLinkedQueue<>();
    private final Queue<NotificationRefusal> refused = new ConcurrentLinkedQueue<>();
    private final Map<InetAddress, List<NotificationSender>> senders = new ConcurrentHashMap<>();
    private final AtomicInteger received = new AtomicInteger();
    private NotificationReceiver receiver;

    @BeforeEach
    void open() throws IOException {
        receiver = NotificationReceiver.open(
                new InetSocketAddress("127.0.0.1", 0),
                OWN,
                address -> senders.getOrDefault(address, List.of()),
                new NotificationListener() {
                    @Override
                    public boolean take(Notification notification) {
                        return heard.add(notification);
                    }

                    @Override
                    public void refused(InetAddress from, int version, NotificationRefusal reason) {
                        refused.add(reason);
                    }

                    @Override
                    public void received() {
                        received.incrementAndGet();
                    }
                },
                new NotificationLimits(1_000, 1_000));
    }

    @AfterEach
    void close() {
        receiver.close();
    }

    private void know(String address, NotificationSender... here) throws IOException {
        senders.put(InetAddress.getByName(address), List.of(here));
    }

    private static NotificationSender sender(long id, SnmpAccess own, SnmpAccess... others) {
        return new NotificationSender(id, 1, own, List.of(others), "");
    }

    private int send(String tool, List<String> access, String... arguments) throws IOException {
        return SentByNetSnmp.run(tool, FROM, receiver.address().getPort(), access, arguments)
                .exit();
    }

    private Notification only() {
        await().until(() -> !heard.isEmpty());
        assertThat(heard).hasSize(1);
        return heard.peek();
    }

    private NotificationRefusal onlyRefusal() {
        await().until(() -> !refused.isEmpty());
        assertThat(heard).isEmpty();
        return refused.peek();
    }

    @Test
    void aTrapOfVersion1IsTakenAsRfc3584Says() throws IOException {
        know(FROM, sender(7, new SnmpAccess.Community(2, "shore-read")));
        assertThat(send(
                        "snmptrap",
                        List.of("-v", "1", "-c", "shore-read"),
                        "1.3.6.1.4.1.32473.1",
                        FROM,
                        "6",
                        "17",
                        "4711"))
                .isZero();
        Notification notification = only();
        assertThat(notification.sender()).isEqualTo(7);
        assertThat(notification.version()).isEqualTo(1);
        assertThat(notification.oid()).isEqualTo("1.3.6.1.4.1.32473.1.0.17");
        assertThat(notification.inform()).isFalse();
    }

    @Test
    void aTrapThatWasPassedOnBelongsToTheDeviceThatItNames() throws IOException {
        know("192.0.2.9", sender(9, new SnmpAccess.Community(1, "shore-read")));
        List<String> fits = List.of("-v", "1", "-c", "shore-read");
        send("snmptrap", fits, "1.3.6.1.4.1.32473.1", "192.0.2.9", "3", "0", "4711");
        assertThat(only().sender()).isEqualTo(9);
        assertThat(only().oid()).isEqualTo("1.3.6.1.6.3.1.1.5.4");
        send("snmptrap", List.of("-v", "1", "-c", "other"), "1.3.6.1.4.1.32473.1", "192.0.2.9", "3", "0", "4711");
        await().until(() -> refused.contains(NotificationRefusal.WRONG_COMMUNITY));
        assertThat(heard).hasSize(1);
    }

    @ParameterizedTest
    @ValueSource(strings = {"snmptrap", "snmpinform"})
    void version2cComesInWithItsVariables(String tool) throws IOException {
        know(FROM, sender(7, new SnmpAccess.Community(2, "shore-read")));
        List<String> access = List.of("-v", "2c", "-c", "shore-read");
        assertThat(send(
                        tool,
                        access,
                        "4711",
                        LINK_DOWN,
                        "1.3.6.1.2.1.2.2.1.1.2",
                        "i",
                        "2",
                        "1.3.6.1.2.1.2.2.1.2.2",
                        "s",
                        "eth1"))
                .isZero();
        Notification notification = only();
        assertThat(notification.oid()).isEqualTo(LINK_DOWN);
        assertThat(notification.inform()).isEqualTo(tool.equals("snmpinform"));
        assertThat(notification.variables())
                .extracting(RawAnswer::oid, RawAnswer::value)
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple("1.3.6.1.2.1.2.2.1.1.2", "2"),
                        org.assertj.core.groups.Tuple.tuple("1.3.6.1.2.1.2.2.1.2.2", "eth1"));
    }

    private static SnmpAccess.User user(Level level, AuthProtocol auth, PrivProtocol priv) {
        return new SnmpAccess.User("harbour", level, auth, "signature-pass", priv, "secrecy-pass");
    }

    private static List<String> access(Level level, String auth, String priv, String engine) {
        List<String> access = new java.util.ArrayList<>(List.of("-v", "3", "-u", "harbour"));
        access.addAll(List.of(
                "-l", level == Level.NO_AUTH ? "noAuthNoPriv" : level == Level.AUTH ? "authNoPriv" : "authPriv"));
        if (level != Level.NO_AUTH) {
            access.addAll(List.of("-a", auth, "-A", "signature-pass"));
        }
        if (level == Level.AUTH_PRIV) {
            access.addAll(List.of("-x", priv, "-X", "secrecy-pass"));
        }
        if (engine != null) {
            access.addAll(List.of("-e", "0x" + engine));
        }
        return access;
    }

    @ParameterizedTest
    @CsvSource({
        "NO_AUTH,SHA1,SHA,AES128,AES",
        "AUTH,SHA1,SHA,AES128,AES",
        "AUTH,SHA256,SHA-256,AES128,AES",
        "AUTH,SHA512,SHA-512,AES128,AES",
        "AUTH_PRIV,SHA1,SHA,AES128,AES",
        "AUTH_PRIV,SHA224,SHA-224,AES128,AES",
        "AUTH_PRIV,SHA256,SHA-256,AES128,AES",
        "AUTH_PRIV,SHA384,SHA-384,AES192,AES-192",
        "AUTH_PRIV,SHA512,SHA-512,AES256,AES-256"
    })
    void version3ComesInAtEveryLevel(
            Level level, AuthProtocol auth, String authWord, PrivProtocol priv, String privWord) throws IOException {
        know(FROM, sender(7, user(level, auth, priv)));
        assertThat(send("snmpinform", access(level, authWord, privWord, null), "4711", LINK_DOWN))
                .isZero();
        assertThat(only().inform()).isTrue();
        heard.clear();
        assertThat(send("snmptrap", access(level, authWord, privWord, ENGINE), "4711", LINK_DOWN))
                .isZero();
        Notification trap = only();
        assertThat(trap.inform()).isFalse();
        assertThat(trap.version()).isEqualTo(3);
        assertThat(trap.sender()).isEqualTo(7);
        assertThat(refused).isEmpty();
    }

    @Test
    void aWrongCommunityIsNotLetInAndAnInformIsNotAnswered() throws IOException {
        know(FROM, sender(7, new SnmpAccess.Community(2, "shore-read")));
        assertThat(send("snmpinform", List.of("-v", "2c", "-c", "guessed", "-r", "0"), "4711", LINK_DOWN))
                .isNotZero();
        assertThat(onlyRefusal()).isEqualTo(NotificationRefusal.WRONG_COMMUNITY);
    }

    @Test
    void anotherCommunityThatIsUsableAtTheSiteIsLetIn() throws IOException {
        know(FROM, sender(7, user(Level.AUTH, AuthProtocol.SHA256, null), new SnmpAccess.Community(1, "notify-only")));
        assertThat(send("snmpinform", List.of("-v", "2c", "-c", "notify-only"), "4711", LINK_DOWN))
                .isZero();
        assertThat(only().sender()).isEqualTo(7);
    }

    /** RFC 3414 section 3.2: each fault is told by its own counter, which net-snmp puts into words. */
    @ParameterizedTest
    @CsvSource({
        "stranger,signature-pass,secrecy-pass,UNKNOWN_USER,Unknown user name",
        "harbour,another-pass,secrecy-pass,WRONG_DIGEST,Authentication failure",
        "harbour,signature-pass,another-pass,PRIVACY_FAILED,Decryption error"
    })
    void faultsOfVersion3AreTold(String name, String auth, String priv, NotificationRefusal reason, String words)
            throws IOException {
        know(FROM, sender(7, user(Level.AUTH_PRIV, AuthProtocol.SHA256, PrivProtocol.AES128)));
        List<String> access =
                List.of("-v", "3", "-u", name, "-l", "authPriv", "-a", "SHA-256", "-A", auth, "-x", "AES", "-X", priv);
        SentByNetSnmp.Said said =
                SentByNetSnmp.run("snmpinform", FROM, receiver.address().getPort(), access, "4711", LINK_DOWN);
        assertThat(said.exit()).isNotZero();
        assertThat(said.output()).containsIgnoringCase(words);
        assertThat(onlyRefusal()).isEqualTo(reason);
    }

    @Test
    void lessProtectionThanTheCredentialsAskForIsNotLetIn() throws IOException {
        know(FROM, sender(7, user(Level.AUTH_PRIV, AuthProtocol.SHA256, PrivProtocol.AES128)));
        assertThat(send("snmpinform", access(Level.NO_AUTH, "", "", null), "4711", LINK_DOWN))
                .isNotZero();
        assertThat(onlyRefusal()).isEqualTo(NotificationRefusal.LEVEL_UNSUPPORTED);
    }

    @Test
    void aStrangerGetsNoAnswerAtAll() throws IOException {
        assertThat(send("snmpinform", access(Level.AUTH, "SHA-256", "", null), "4711", LINK_DOWN))
                .isNotZero();
        assertThat(onlyRefusal()).isEqualTo(NotificationRefusal.UNKNOWN_SENDER);
    }

    @Test
    void whatSeveralCustomersDevicesMayHaveSentIsDoubtful() throws IOException {
        SnmpAccess shared = new SnmpAccess.Community(2, "same-word");
        know(
                FROM,
                new NotificationSender(1, 1, shared, List.of(), ""),
                new NotificationSender(2, 2, shared, List.of(), ""));
        assertThat(send("snmpinform", List.of("-v", "2c", "-c", "same-word", "-r", "0"), "4711", LINK_DOWN))
                .isNotZero();
        assertThat(onlyRefusal()).isEqualTo(NotificationRefusal.DOUBTFUL);
    }

    @Test
    void theEngineIdTellsDevicesWithOneAddressAndOneSecretApart() throws IOException {
        SnmpAccess shared = user(Level.AUTH, AuthProtocol.SHA256, null);
        know(
                FROM,
                new NotificationSender(1, 1, shared, List.of(), "80007ed90401"),
                new NotificationSender(2, 2, shared, List.of(), ENGINE));
        send("snmptrap", access(Level.AUTH, "SHA-256", "", ENGINE), "4711", LINK_DOWN);
        assertThat(only().sender()).isEqualTo(2);
    }

    /** RFC 3414 section 3.2 step 7 b: boots that went back are no accident. */
    @Test
    void aTrapWithBootsFromThePastIsNotLetIn() throws IOException {
        know(FROM, sender(7, user(Level.AUTH, AuthProtocol.SHA256, null)));
        List<String> now = new java.util.ArrayList<>(access(Level.AUTH, "SHA-256", "", ENGINE));
        now.addAll(List.of("-Z", "9,5000"));
        send("snmptrap", now, "4711", LINK_DOWN);
        assertThat(only().sender()).isEqualTo(7);
        List<String> past = new java.util.ArrayList<>(access(Level.AUTH, "SHA-256", "", ENGINE));
        past.addAll(List.of("-Z", "8,5000"));
        send("snmptrap", past, "4712", LINK_DOWN);
        await().until(() -> refused.contains(NotificationRefusal.TIME_WINDOW));
        assertThat(heard).hasSize(1);
    }
}
