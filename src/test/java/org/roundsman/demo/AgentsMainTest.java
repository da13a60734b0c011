package org.roundsman.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.BufferedReader;
import java.io.IOException;
import java.net.BindException;
import java.net.InetSocketAddress;
import java.nio.channels.DatagramChannel;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

class AgentsMainTest {

    @Test
    void readsItsOptions() {
        assertThat(AgentsMain.parse())
                .isEqualTo(new AgentsMain.Options(260, DemoFleet.USUAL_SEED, 16_161, Optional.empty()));
        assertThat(AgentsMain.parse("--role=agents", "--access-points", "500", "--seed=-7", "--port=2000"))
                .isEqualTo(new AgentsMain.Options(500, -7, 2000, Optional.empty()));
        assertThat(AgentsMain.parse("--notify=127.0.0.9:10162").receiver())
                .contains(new InetSocketAddress("127.0.0.9", 10_162));
        assertThatThrownBy(() -> AgentsMain.parse("--notify", "somewhere")).hasMessageContaining("\"somewhere\"");
        assertThatThrownBy(() -> AgentsMain.parse("--notify", "127.0.0.1:0")).hasMessageContaining("127.0.0.1:0");
        assertThatThrownBy(() -> AgentsMain.parse("--aps", "3")).hasMessageContaining("--aps is not known");
        assertThatThrownBy(() -> AgentsMain.parse("--port")).hasMessageContaining("--port");
        assertThatThrownBy(() -> AgentsMain.parse("--port", "many")).hasMessageContaining("\"many\"");
        assertThatThrownBy(() -> AgentsMain.parse("--port", "99999999999")).hasMessageContaining("out of range");
        assertThatThrownBy(() -> AgentsMain.parse("--port", "-99999999999")).hasMessageContaining("--port");
    }

    @Test
    void aTakenPortIsToldWithAddressAndMendAndLeavesNothingOpen() throws IOException {
        DemoFleet fleet = DemoFleet.of(250, 1, 26_164);
        Clock clock = Clock.systemUTC();
        DemoDevice last = fleet.devices().get(fleet.devices().size() - 1);
        try (DatagramChannel other = DatagramChannel.open()) {
            other.bind(new InetSocketAddress(last.host(), last.port()));
            assertThatThrownBy(() -> AgentHost.start(fleet, new Faults(fleet, clock), clock))
                    .isInstanceOf(AgentsNotStarted.class)
                    .hasMessageContaining("26164")
                    .hasMessageContaining(last.host())
                    .hasMessageContaining("choose another port");
        }
        AgentHost.start(fleet, new Faults(fleet, clock), clock).close();
    }

    @Test
    void runsAsAProcessOfItsOwnUntilItIsToldToEnd() throws Exception {
        Process process = process("--access-points", "250", "--port", "26165");
        try (BufferedReader said = process.inputReader()) {
            assertThat(said.readLine())
                    .startsWith("ready: ")
                    .contains("250 access points")
                    .contains("26165");
            DemoDevice gateway = DemoFleet.of(250, DemoFleet.USUAL_SEED, 26_165).devices().stream()
                    .filter(d -> d.model() == DemoModel.TG_4)
                    .findFirst()
                    .orElseThrow();
            // a gateway may have lost its line just now, so that an answer cannot be asked for; its address is in use
            try (DatagramChannel other = DatagramChannel.open()) {
                assertThatThrownBy(() -> other.bind(new InetSocketAddress(gateway.host(), gateway.port())))
                        .isInstanceOf(BindException.class);
            }
            // SIGTERM by the handle, which leaves the streams open
            process.toHandle().destroy();
            assertThat(said.readLine()).isNull();
            assertThat(process.waitFor(30, TimeUnit.SECONDS)).isTrue();
        } finally {
            process.destroyForcibly();
        }
        try (DatagramChannel free = DatagramChannel.open()) {
            free.bind(new InetSocketAddress("127.20.0.1", 26_165));
        }
    }

    @Test
    void aWrongSizeEndsItWithItsUsage() throws Exception {
        Process process = process("--access-points", "7");
        try (BufferedReader said = process.inputReader()) {
            assertThat(said.readLine()).contains("between 250 and 20000").contains("--seed");
        }
        assertThat(process.waitFor()).isEqualTo(2);
    }

    private static Process process(String... options) throws Exception {
        Path classes = Path.of(AgentsMain.class
                .getProtectionDomain()
                .getCodeSource()
                .getLocation()
                .toURI());
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                classes.toString(),
                AgentsMain.class.getName()));
        command.addAll(List.of(options));
        return new ProcessBuilder(command).redirectErrorStream(true).start();
    }
}
