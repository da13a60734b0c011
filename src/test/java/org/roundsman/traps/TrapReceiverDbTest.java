package org.roundsman.traps;

import static org.assertj.core.api.Assertions.assertThat;

import io.micrometer.core.instrument.simple.SimpleMeterRegistry;
import java.io.IOException;
import java.lang.reflect.Proxy;
import java.net.DatagramSocket;
import java.net.InetAddress;
import java.time.Clock;
import java.time.Duration;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.readings.ReadingsFixture;
import org.roundsman.snmp.NotificationLimits;
import org.roundsman.snmp.SnmpAccess;
import org.roundsman.testing.TestDatabase;

/** What an operator sees of the receiver, whatever becomes of its port. */
class TrapReceiverDbTest {

    private DataSource database;

    @BeforeEach
    void migrate() {
        database = TestDatabase.fresh("trap_receiver");
    }

    private TrapReceiver receiver(boolean enabled, int port) {
        Clock clock = Clock.systemUTC();
        SenderDirectory nobody = new SenderDirectory(null, null, null, clock) {
            @Override
            Collection<SnmpAccess> refresh() {
                return List.of();
            }
        };
        TrapReceiver.Counts counts = new TrapReceiver.Counts(
                new UnnamedNotifications(database), new StrangeSenders(), new SimpleMeterRegistry());
        return new TrapReceiver(
                config(enabled, port),
                new TrapReceiver.Ends(database, nobody, oid -> Optional.empty(), device -> Map.of(), clock),
                counts,
                null);
    }

    @Test
    void aTakenPortIsSaidAndTriedAgain() throws IOException {
        DatagramSocket other = new DatagramSocket(0, InetAddress.getByName("127.0.0.1"));
        TrapReceiver receiver = receiver(true, other.getLocalPort());
        receiver.start();
        assertThat(receiver.state())
                .isInstanceOfSatisfying(ReceiverState.Blocked.class, blocked -> assertThat(blocked.why())
                        .contains("UDP port " + other.getLocalPort() + " on 127.0.0.1 cannot be used")
                        .contains("roundsman.traps.port"));
        receiver.tryAgain();
        assertThat(receiver.state()).isInstanceOf(ReceiverState.Blocked.class);
        int port = other.getLocalPort();
        other.close();
        receiver.tryAgain();
        assertThat(receiver.state()).isInstanceOfSatisfying(ReceiverState.Listening.class, l -> assertThat(l.port())
                .isEqualTo(port));
        receiver.stop();
        assertThat(receiver.state()).isInstanceOf(ReceiverState.Off.class);
    }

    @Test
    void eachStartIsAnotherBootOfOneEngine() {
        for (int i = 0; i < 2; i++) {
            TrapReceiver receiver = receiver(true, 0);
            receiver.start();
            receiver.stop();
        }
        assertThat(new ReadingsFixture(database).ids("select boots from own_engine"))
                .containsExactly(2L);
    }

    @Test
    void switchedOffItTakesNoPort() {
        TrapReceiver receiver = receiver(false, 0);
        receiver.start();
        assertThat(receiver.state()).isInstanceOf(ReceiverState.Off.class);
        receiver.stop();
        assertThat(new ReadingsFixture(database).count("own_engine")).isZero();
    }

    /** A class of its own would be taken for a bean by the container of other tests. */
    private static TrapsConfig config(boolean enabled, int port) {
        Map<String, Object> values = Map.of(
                "enabled",
                enabled,
                "address",
                "127.0.0.1",
                "port",
                port,
                "roundEvery",
                Duration.ofSeconds(10),
                "deviceBurst",
                30,
                "deviceOnePer",
                Duration.ofSeconds(10),
                "sumEvery",
                Duration.ofMinutes(10),
                "limits",
                new NotificationLimits(500, 200));
        return (TrapsConfig) Proxy.newProxyInstance(
                TrapsConfig.class.getClassLoader(),
                new Class<?>[] {TrapsConfig.class},
                (proxy, method, arguments) -> values.get(method.getName()));
    }
}
