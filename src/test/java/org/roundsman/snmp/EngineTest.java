package org.roundsman.snmp;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.roundsman.measure.Fact;
import org.roundsman.measure.Outcome;
import org.roundsman.snmp.SnmpAccess.AuthProtocol;
import org.roundsman.snmp.SnmpAccess.Level;
import org.roundsman.snmp.SnmpAccess.PrivProtocol;
import org.roundsman.snmp.SnmpAccess.User;

/** SNMPv3 engines (RFC 3414) whose side of the conversation is the SNMP library's own. */
class EngineTest {

    private static final String ENGINE = "80007ed90401";
    private static final User WALKER = new User(
            "walker", Level.AUTH_PRIV, AuthProtocol.SHA256, "authentication", PrivProtocol.AES128, "confidential");

    private SnmpVisitor visitor;

    @BeforeEach
    void open() throws IOException {
        visitor = SnmpVisitor.open(
                new SnmpSettings(Duration.ofMillis(500), 1, Duration.ofHours(1), 1_000, 1),
                ProfileSet.load(List.of()),
                Clock.systemUTC());
    }

    @AfterEach
    void close() {
        visitor.close();
    }

    private Visit visit(DeviceMemory memory) {
        return visitor.visit(memory, VisitKind.ROUND)
                .orTimeout(20, TimeUnit.SECONDS)
                .join();
    }

    @ParameterizedTest
    @CsvSource({"SHA1,AES128", "SHA224,AES192", "SHA256,AES128", "SHA384,AES256", "SHA512,AES128", "SHA1,AES256"})
    void everyProtocolIsUnderstood(AuthProtocol auth, PrivProtocol priv) throws IOException {
        User user = new User("walker", Level.AUTH_PRIV, auth, "authentication", priv, "confidential");
        try (LibraryAgent agent = new LibraryAgent(0, ENGINE, 1, user)) {
            Visit visit = visit(new DeviceMemory(agent.as(user)));
            assertThat(visit.outcome()).isEqualTo(Outcome.ANSWERED);
            assertThat(visit.facts().orElseThrow().values()).containsEntry(Fact.NAME, "library");
        }
    }

    @Test
    void aWrongPrivacyPasswordIsToldApart() throws IOException {
        User mistaken = new User(
                "walker",
                Level.AUTH_PRIV,
                AuthProtocol.SHA256,
                "authentication",
                PrivProtocol.AES128,
                "wrong-password");
        try (LibraryAgent agent = new LibraryAgent(0, ENGINE, 1, WALKER)) {
            assertThat(visit(new DeviceMemory(agent.as(mistaken))).outcome()).isEqualTo(Outcome.PRIVACY_FAILED);
        }
    }

    @Test
    void twoDevicesWithOneEngineIdAndOneUserNameDoNotDisturbEachOther() throws IOException {
        User other = new User(
                "walker",
                Level.AUTH_PRIV,
                AuthProtocol.SHA256,
                "another-password",
                PrivProtocol.AES128,
                "another-secret");
        try (LibraryAgent one = new LibraryAgent(0, ENGINE, 3, WALKER);
                LibraryAgent two = new LibraryAgent(0, ENGINE, 900, other)) {
            DeviceMemory first = new DeviceMemory(one.as(WALKER));
            DeviceMemory second = new DeviceMemory(two.as(other));
            visit(first);
            visit(second);
            for (int i = 0; i < 5; i++) {
                assertThat(visit(first).outcome()).isEqualTo(Outcome.ANSWERED);
                assertThat(visit(second).outcome()).isEqualTo(Outcome.ANSWERED);
                assertThat(visit(first).requests()).as("no synchronising anew").isEqualTo(1);
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"5,6", "5,900", "900,1"})
    void anEngineThatRestartedIsFollowedWhateverItsBootCount(int before, int after) throws IOException {
        DeviceMemory memory;
        int port;
        try (LibraryAgent agent = new LibraryAgent(0, ENGINE, before, WALKER)) {
            memory = new DeviceMemory(agent.as(WALKER));
            port = agent.port();
            assertThat(visit(memory).outcome()).isEqualTo(Outcome.ANSWERED);
        }
        try (LibraryAgent agent = new LibraryAgent(port, ENGINE, after, WALKER)) {
            assertThat(agent.port()).isEqualTo(port);
            Visit visit = visit(memory);
            assertThat(visit.outcome()).isEqualTo(Outcome.ANSWERED);
            assertThat(visit.timeouts()).isZero();
        }
    }

    @Test
    void aDeviceThatWasExchangedIsRemarked() throws IOException {
        DeviceMemory memory;
        int port;
        try (LibraryAgent agent = new LibraryAgent(0, ENGINE, 5, WALKER)) {
            memory = new DeviceMemory(agent.as(WALKER));
            port = agent.port();
            visit(memory);
        }
        try (LibraryAgent agent = new LibraryAgent(port, "80007ed90402", 1, WALKER)) {
            assertThat(agent.port()).isEqualTo(port);
            // This library's agent drops what is meant for another engine, as some devices do.
            assertThat(visit(memory).outcome()).isEqualTo(Outcome.NO_REPLY);
            Visit visit = visit(memory);
            assertThat(visit.outcome()).isEqualTo(Outcome.ANSWERED);
            assertThat(visit.remarks()).contains("the engine ID changed");
        }
    }
}
