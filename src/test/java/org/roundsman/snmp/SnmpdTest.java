package org.roundsman.snmp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.awaitility.Awaitility;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.roundsman.measure.Fact;
import org.roundsman.measure.Metric;
import org.roundsman.measure.Outcome;
import org.roundsman.snmp.SnmpAccess.AuthProtocol;
import org.roundsman.snmp.SnmpAccess.Level;
import org.roundsman.snmp.SnmpAccess.PrivProtocol;
import org.roundsman.snmp.SnmpAccess.User;

/** Debian's snmpd is visited, and what we read is compared with what net-snmp's own tools print. */
class SnmpdTest {

    private static final User WALKER = new User(
            "walker", Level.AUTH_PRIV, AuthProtocol.SHA256, "authentication", PrivProtocol.AES128, "confidential");

    @TempDir
    static Path folder;

    private static Snmpd snmpd;
    private SnmpVisitor visitor;

    @BeforeAll
    static void start() throws IOException {
        snmpd = new Snmpd(folder).start();
    }

    @AfterAll
    static void stop() {
        snmpd.close();
    }

    @BeforeEach
    void open() throws IOException {
        visitor = SnmpVisitor.open(
                new SnmpSettings(Duration.ofMillis(800), 2, Duration.ofHours(1), 1_000, 1),
                ProfileSet.load(List.of()),
                Clock.systemUTC());
    }

    @AfterEach
    void close() {
        visitor.close();
    }

    private Visit visit(DeviceMemory memory, VisitKind kind) {
        return visitor.visit(memory, kind).orTimeout(30, TimeUnit.SECONDS).join();
    }

    private Visit visit(User user) {
        return visit(new DeviceMemory(snmpd.agent(user)), VisitKind.ROUND);
    }

    @Test
    void factsAreWhatSnmpgetPrints() {
        Visit visit = visit(new DeviceMemory(snmpd.asV2()), VisitKind.ROUND);
        Map<String, String> printed = snmpd.get(
                "1.3.6.1.2.1.1.1.0",
                "1.3.6.1.2.1.1.2.0",
                "1.3.6.1.2.1.1.5.0",
                "1.3.6.1.2.1.1.6.0",
                "1.3.6.1.2.1.1.4.0",
                "1.3.6.1.6.3.10.2.1.1.0");
        Map<Fact, String> facts = visit.facts().orElseThrow().values();
        assertThat(visit.outcome()).isEqualTo(Outcome.ANSWERED);
        assertThat(visit.profiles()).containsExactly("host");
        assertThat(facts)
                .containsEntry(Fact.DESCRIPTION, printed.get("1.3.6.1.2.1.1.1.0"))
                .containsEntry(Fact.OBJECT_ID, printed.get("1.3.6.1.2.1.1.2.0").substring(1))
                .containsEntry(Fact.NAME, "snmpd-under-test")
                .containsEntry(Fact.LOCATION, printed.get("1.3.6.1.2.1.1.6.0"))
                .containsEntry(Fact.CONTACT, printed.get("1.3.6.1.2.1.1.4.0"));
        assertThat(facts.get(Fact.ENGINE_ID))
                .isEqualToIgnoringCase(printed.get("1.3.6.1.6.3.10.2.1.1.0").replace(" ", ""));
    }

    @Test
    void figuresAreWhatSnmpbulkwalkPrints() {
        DeviceMemory memory = new DeviceMemory(snmpd.asV2());
        Visit visit = visit(memory, VisitKind.TRACED);
        Map<String, String> storage = snmpd.walk("1.3.6.1.2.1.25.2.3.1");
        double size = Double.parseDouble(storage.get("1.3.6.1.2.1.25.2.3.1.5.1"));
        double used = Double.parseDouble(storage.get("1.3.6.1.2.1.25.2.3.1.6.1"));
        assertThat(storage)
                .as("row 1 is the memory")
                .containsEntry("1.3.6.1.2.1.25.2.3.1.2.1", ".1.3.6.1.2.1.25.2.1.2");
        assertThat(visit.device().raw(Metric.MEMORY)).isEqualTo(100 * used / size, within(8.0));
        double ticks = Double.parseDouble(snmpd.get("1.3.6.1.2.1.1.3.0").get("1.3.6.1.2.1.1.3.0"));
        assertThat(visit.device().raw(Metric.UPTIME))
                .isLessThanOrEqualTo(ticks / 100)
                .isGreaterThan(ticks / 100 - 20);
        // The raw answers carry the octets that were decoded: what stands still must be the same in both.
        Map<String, String> raw = visit.raw().stream()
                .collect(java.util.stream.Collectors.toMap(RawAnswer::oid, RawAnswer::value, (a, b) -> b));
        assertThat(raw.get("1.3.6.1.2.1.25.2.3.1.5.1")).isEqualTo(storage.get("1.3.6.1.2.1.25.2.3.1.5.1"));
        Map<String, String> types = snmpd.walk("1.3.6.1.2.1.2.2.1.3");
        assertThat(types).isNotEmpty().allSatisfy((oid, type) -> assertThat(raw).containsEntry(oid, type));
    }

    @Test
    void theUplinkIsTheFirstEthernetPortThatIsUp() {
        Map<String, String> table = snmpd.walk("1.3.6.1.2.1.2.2.1");
        String index = table.keySet().stream()
                .filter(oid ->
                        oid.startsWith("1.3.6.1.2.1.2.2.1.3.") && table.get(oid).equals("6"))
                .map(oid -> oid.substring("1.3.6.1.2.1.2.2.1.3.".length()))
                .filter(row -> table.get("1.3.6.1.2.1.2.2.1.8." + row).equals("1"))
                .findFirst()
                .orElse("");
        Visit visit = visit(new DeviceMemory(snmpd.asV2()), VisitKind.TRACED);
        List<String> counters = visit.raw().stream()
                .map(RawAnswer::oid)
                .filter(oid -> oid.startsWith("1.3.6.1.2.1.31.1.1.1.6."))
                .toList();
        assertThat(counters).isEqualTo(index.isEmpty() ? List.of() : List.of("1.3.6.1.2.1.31.1.1.1.6." + index));
    }

    static Stream<User> goodUsers() {
        return Stream.of(
                WALKER,
                new User(
                        "elder",
                        Level.AUTH_PRIV,
                        AuthProtocol.SHA1,
                        "authentication-1",
                        PrivProtocol.AES128,
                        "confidential-1"),
                new User(
                        "sha512",
                        Level.AUTH_PRIV,
                        AuthProtocol.SHA512,
                        "authentication-5",
                        PrivProtocol.AES256,
                        "confidential-5"),
                new User(
                        "middle",
                        Level.AUTH_PRIV,
                        AuthProtocol.SHA224,
                        "authentication-2",
                        PrivProtocol.AES192,
                        "confidential-2"),
                new User("signer", Level.AUTH, AuthProtocol.SHA384, "authentication-3", null, null),
                new User("open", Level.NO_AUTH, null, null, null, null));
    }

    @ParameterizedTest
    @MethodSource("goodUsers")
    void version3AnswersAtEveryLevel(User user) {
        DeviceMemory memory = new DeviceMemory(snmpd.agent(user));
        Visit visit = visit(memory, VisitKind.ROUND);
        assertThat(visit.outcome()).isEqualTo(Outcome.ANSWERED);
        assertThat(visit.facts().orElseThrow().values()).containsEntry(Fact.NAME, "snmpd-under-test");
        Visit next = visit(memory, VisitKind.ROUND);
        assertThat(next.outcome()).isEqualTo(Outcome.ANSWERED);
        assertThat(next.requests()).as("engine, keys and plan are remembered").isEqualTo(1);
    }

    static Stream<Arguments> badUsers() {
        return Stream.of(
                Arguments.of(walker(AuthProtocol.SHA256, "wrong-password", "confidential"), Outcome.WRONG_DIGEST),
                Arguments.of(walker(AuthProtocol.SHA512, "authentication", "confidential"), Outcome.WRONG_DIGEST),
                Arguments.of(walker(AuthProtocol.SHA256, "authentication", "wrong-password"), Outcome.PRIVACY_FAILED),
                Arguments.of(walker(AuthProtocol.SHA256, "", ""), Outcome.WRONG_DIGEST),
                Arguments.of(named("stranger", AuthProtocol.SHA256, "authentication"), Outcome.USER_UNKNOWN),
                Arguments.of(named("signer", AuthProtocol.SHA384, "authentication-3"), Outcome.LEVEL_UNSUPPORTED),
                Arguments.of(
                        new User("walker", Level.AUTH, AuthProtocol.SHA256, "authentication", null, null),
                        Outcome.ACCESS_DENIED));
    }

    private static User walker(AuthProtocol auth, String authPassword, String privPassword) {
        return new User("walker", Level.AUTH_PRIV, auth, authPassword, PrivProtocol.AES128, privPassword);
    }

    private static User named(String name, AuthProtocol auth, String authPassword) {
        return new User(name, Level.AUTH_PRIV, auth, authPassword, PrivProtocol.AES128, "confidential");
    }

    @ParameterizedTest
    @MethodSource("badUsers")
    void version3RefusalsNameTheirCause(User user, Outcome cause) {
        assertThat(visit(user).outcome()).isEqualTo(cause);
    }

    @Test
    void aWrongCommunityIsOnlySilence() {
        Agent agent = snmpd.agent(new SnmpAccess.Community(2, "wrong"));
        assertThat(visit(new DeviceMemory(agent), VisitKind.ROUND).outcome()).isEqualTo(Outcome.NO_REPLY);
    }

    @Test
    void version1Works() {
        DeviceMemory memory = new DeviceMemory(snmpd.agent(new SnmpAccess.Community(1, Snmpd.COMMUNITY)));
        Visit visit = visit(memory, VisitKind.ROUND);
        assertThat(visit.outcome()).isEqualTo(Outcome.ANSWERED);
        assertThat(visit.device().has(Metric.MEMORY)).isTrue();
        assertThat(visit(memory, VisitKind.ROUND).requests()).isEqualTo(1);
    }

    @Test
    void goesSilentAndComesBackAsItIsStoppedAndStarted() throws IOException {
        DeviceMemory plain = new DeviceMemory(snmpd.asV2());
        DeviceMemory secured = new DeviceMemory(snmpd.agent(WALKER));
        assertThat(visit(plain, VisitKind.ROUND).outcome()).isEqualTo(Outcome.ANSWERED);
        assertThat(visit(secured, VisitKind.ROUND).outcome()).isEqualTo(Outcome.ANSWERED);
        // The uptime has to go back by more than the tolerance for a restart to be seen by it alone.
        Awaitility.await()
                .atMost(30, TimeUnit.SECONDS)
                .until(() -> visit(plain, VisitKind.ROUND).device().raw(Metric.UPTIME) > 8);
        visit(secured, VisitKind.ROUND);
        snmpd.stop();
        assertThat(visit(plain, VisitKind.ROUND).outcome()).isEqualTo(Outcome.PORT_CLOSED);
        assertThat(visit(secured, VisitKind.PROBE).outcome()).isEqualTo(Outcome.PORT_CLOSED);
        snmpd.start();
        Visit back = visit(plain, VisitKind.PROBE);
        assertThat(back.outcome()).isEqualTo(Outcome.ANSWERED);
        assertThat(back.restarted()).isTrue();
        assertThat(back.facts()).as("facts are read again after a restart").isPresent();
        Visit securedBack = visit(secured, VisitKind.PROBE);
        assertThat(securedBack.outcome())
                .as("boot count and time are synchronised anew")
                .isEqualTo(Outcome.ANSWERED);
        assertThat(securedBack.restarted()).isTrue();
    }
}
