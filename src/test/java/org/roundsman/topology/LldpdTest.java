package org.roundsman.topology;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.DatagramSocket;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.awaitility.Awaitility;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.measure.Outcome;
import org.roundsman.snmp.Agent;
import org.roundsman.snmp.DeviceMemory;
import org.roundsman.snmp.ProfileSet;
import org.roundsman.snmp.SnmpAccess;
import org.roundsman.snmp.SnmpSettings;
import org.roundsman.snmp.SnmpVisitor;
import org.roundsman.snmp.TableReading;
import org.roundsman.topology.read.Decoding;
import org.roundsman.topology.read.Snapshot;
import org.roundsman.topology.read.Tables;

/**
 * Debian's lldpd at both ends of a virtual cable, one of them below Debian's snmpd by AgentX: LLDP-MIB as others serve it,
 * compared with what lldpcli and snmpbulkwalk print. Needs the right to make network interfaces; where that is missing the
 * test says so and is left out, and {@code DecodingTest} covers the same by written tables.
 */
class LldpdTest {

    private static final String HOST = "127.0.7.9";
    private static final String NEAR = "rmlldp0";
    private static final String FAR = "rmlldp1";
    private static final String SPACE = "rmlldp";
    private static final String NEAR_MAC = "02:00:5e:00:53:a1";
    private static final String FAR_MAC = "02:00:5e:00:53:b1";

    @TempDir
    static Path folder;

    private static final List<Process> CHILDREN = new ArrayList<>();
    private static int port;
    private static boolean cabled;
    private static SnmpVisitor visitor;

    @BeforeAll
    static void connect() throws IOException {
        for (String tool : List.of("ip", "lldpd", "lldpcli", "snmpd")) {
            assumeTrue(found(tool), tool + " is not installed here");
        }
        Printed space = run("ip", "netns", "add", SPACE);
        assumeTrue(space.status() == 0, "no network namespace can be made here: " + space.text());
        cabled = true;
        Printed cable = run("ip", "link", "add", NEAR, "type", "veth", "peer", "name", FAR, "netns", SPACE);
        assumeTrue(cable.status() == 0, "no virtual cable can be made here: " + cable.text());
        // lldpd gives its rights away before it reads its configuration.
        Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwxr-xr-x"));
        done("ip", "link", "set", NEAR, "address", NEAR_MAC);
        done("ip", "-n", SPACE, "link", "set", FAR, "address", FAR_MAC);
        done("ip", "link", "set", NEAR, "up");
        done("ip", "-n", SPACE, "link", "set", FAR, "up");
        snmpd();
        start(lldpd(
                "near",
                NEAR,
                "sw-a.example",
                "-x",
                "-X",
                folder.resolve("agentx").toString()));
        List<String> far = new ArrayList<>(List.of("ip", "netns", "exec", SPACE));
        far.addAll(lldpd("far", FAR, "ap-7.example", "-m", "192.0.2.7"));
        start(far);
        visitor = SnmpVisitor.open(
                new SnmpSettings(Duration.ofSeconds(2), 1, Duration.ofHours(1), 20_000, 1),
                ProfileSet.load(List.of()),
                Clock.systemUTC());
        Awaitility.await()
                .atMost(40, TimeUnit.SECONDS)
                .pollInterval(Duration.ofMillis(500))
                .until(() -> walk("1.0.8802.1.1.2.1.4.1.1.9").values().stream()
                        .anyMatch(value -> value.contains("ap-7.example")));
    }

    @AfterAll
    static void disconnect() throws IOException {
        CHILDREN.forEach(Process::destroy);
        for (Process child : CHILDREN) {
            child.onExit().orTimeout(10, TimeUnit.SECONDS).join();
        }
        if (visitor != null) {
            visitor.close();
        }
        if (cabled) {
            run("ip", "link", "del", NEAR);
            run("ip", "netns", "del", SPACE);
        }
    }

    private static void snmpd() throws IOException {
        try (DatagramSocket socket = new DatagramSocket(new InetSocketAddress(InetAddress.getByName(HOST), 0))) {
            port = socket.getLocalPort();
        }
        Path configuration = folder.resolve("snmpd.conf");
        Files.writeString(configuration, """
                agentAddress udp:%s:%d
                rocommunity lantern
                sysName sw-a.example
                master agentx
                agentXSocket %s
                """.formatted(HOST, port, folder.resolve("agentx")));
        start(List.of(
                "snmpd",
                "-f",
                "-C",
                "-c",
                configuration.toString(),
                "-Lf",
                folder.resolve("snmpd.log").toString()));
        Awaitility.await().atMost(20, TimeUnit.SECONDS).until(() -> !walk("1.3.6.1.2.1.1.5")
                .isEmpty());
    }

    private static List<String> lldpd(String name, String device, String system, String... more) throws IOException {
        Path configuration = folder.resolve(name + ".conf");
        Files.writeString(configuration, """
                configure system hostname %s
                configure lldp tx-interval 1
                """.formatted(system));
        List<String> command = new ArrayList<>(
                List.of("lldpd", "-d", "-u", folder.resolve(name + ".socket").toString()));
        command.addAll(List.of("-I", device, "-C", device, "-O", configuration.toString(), "-S", "Invented " + name));
        command.addAll(List.of(more));
        return command;
    }

    private static void start(List<String> command) throws IOException {
        ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
        builder.environment().put("SNMP_PERSISTENT_DIR", folder.resolve("kept").toString());
        builder.environment().put("SNMPCONFPATH", folder.toString());
        builder.environment().put("MIBS", "");
        builder.redirectOutput(folder.resolve("out-" + CHILDREN.size()).toFile());
        CHILDREN.add(builder.start());
    }

    private record Printed(int status, String text) {}

    private static boolean found(String tool) {
        return List.of("/usr/sbin/", "/usr/bin/", "/sbin/", "/bin/").stream()
                .anyMatch(place -> Files.isExecutable(Path.of(place + tool)));
    }

    private static Printed run(String... command) throws IOException {
        ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
        builder.environment().put("MIBS", "");
        Process child = builder.start();
        String text = new String(child.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        return new Printed(child.onExit().orTimeout(20, TimeUnit.SECONDS).join().exitValue(), text.strip());
    }

    private static void done(String... command) throws IOException {
        Printed printed = run(command);
        assertThat(printed.status())
                .as(String.join(" ", command) + ": " + printed.text())
                .isZero();
    }

    /** What snmpbulkwalk prints, by numeric name. */
    private static Map<String, String> walk(String oid) throws IOException {
        Map<String, String> values = new LinkedHashMap<>();
        run("snmpbulkwalk", "-v2c", "-c", "lantern", "-r0", "-t1", "-Onqe", HOST + ":" + port, oid)
                .text()
                .lines()
                .map(line -> line.split(" ", 2))
                .filter(pair -> pair.length == 2 && pair[0].startsWith(".1.") && !pair[1].startsWith("No Such"))
                .forEach(pair -> values.put(
                        pair[0].substring(1), pair[1].replace("\"", "").strip()));
        return values;
    }

    private static JsonNode lldpcli() throws IOException {
        String printed = run(
                        "lldpcli",
                        "-u",
                        folder.resolve("near.socket").toString(),
                        "-f",
                        "json",
                        "show",
                        "neighbors",
                        "details")
                .text();
        return new ObjectMapper().readTree(printed).at("/lldp/interface/" + NEAR);
    }

    private static Snapshot read() {
        Agent agent = new Agent(HOST, port, new SnmpAccess.Community(2, "lantern"));
        TableReading reading = visitor.tables(new DeviceMemory(agent), Tables.of(DeviceKind.NETWORK_SWITCH), 20_000)
                .join();
        assertThat(reading.outcome()).isEqualTo(Outcome.ANSWERED);
        assertThat(reading.remarks()).isEmpty();
        return Decoding.of(reading);
    }

    @Test
    void theNeighbourIsTheOneThatLldpcliShows() throws IOException {
        Snapshot snapshot = read();
        assertThat(snapshot.neighbours()).hasSize(1);
        NeighbourSeen.Announced announced = snapshot.neighbours().get(0).announced();
        JsonNode shown = lldpcli();
        String name = shown.at("/chassis").fieldNames().next();
        JsonNode chassis = shown.at("/chassis").get(name);
        assertThat(announced.systemName()).isEqualTo(name).isEqualTo("ap-7.example");
        assertThat(announced.chassis().what()).isEqualTo(LldpId.What.MAC);
        assertThat(announced.chassis().text())
                .isEqualTo(chassis.at("/id/value").asText())
                .isEqualTo(FAR_MAC);
        assertThat(announced.portOf().text())
                .isEqualTo(shown.at("/port/id/value").asText());
        assertThat(announced.portText())
                .isEqualTo(shown.at("/port/descr").asText())
                .isEqualTo(FAR);
        assertThat(announced.systemText()).isEqualTo(chassis.at("/descr").asText());
        assertThat(announced.addresses())
                .contains(
                        chassis.at("/mgmt-ip").isArray()
                                ? chassis.at("/mgmt-ip").get(0).asText()
                                : chassis.at("/mgmt-ip").asText());
    }

    /** lldpd is no bridge: LLDP's number is the ifIndex, and the port's own identifier says so. */
    @Test
    void itIsHeardOnTheInterfaceThatSnmpdShows() throws IOException {
        Map<String, String> names = walk("1.3.6.1.2.1.2.2.1.2");
        int index = names.entrySet().stream()
                .filter(entry -> entry.getValue().equals(NEAR))
                .map(entry ->
                        Integer.parseInt(entry.getKey().substring(entry.getKey().lastIndexOf('.') + 1)))
                .findFirst()
                .orElseThrow();
        Snapshot snapshot = read();
        Snapshot.Heard heard = snapshot.neighbours().get(0);
        assertThat(heard.port()).isEqualTo(index);
        assertThat(heard.portBy()).contains("identifier of the port");
        Port port = snapshot.ports().stream()
                .filter(each -> each.number() == index)
                .findFirst()
                .orElseThrow();
        assertThat(port.mac()).isEqualTo(NEAR_MAC);
        assertThat(port.state()).isEqualTo(PortState.UP);
        assertThat(port.title()).isEqualTo("port " + NEAR);
        String row = walk("1.0.8802.1.1.2.1.4.1.1.9").keySet().iterator().next();
        assertThat(row).endsWith("." + heard.localPort() + ".1");
    }

    @Test
    void itSaysOfItselfWhatSnmpbulkwalkPrints() throws IOException {
        Snapshot snapshot = read();
        assertThat(snapshot.whole().all()).isTrue();
        assertThat(snapshot.whole().offered().lldp()).isTrue();
        assertThat(snapshot.whole().offered().bridge()).isFalse();
        assertThat(snapshot.systemName()).isEqualTo(walk("1.3.6.1.2.1.1.5").get("1.3.6.1.2.1.1.5.0"));
        String printed = walk("1.0.8802.1.1.2.1.3.2").get("1.0.8802.1.1.2.1.3.2.0");
        assertThat(LldpId.chassis(4, snapshot.chassis().orElseThrow().octets()).text())
                .isEqualTo(printed.replace(' ', ':').toLowerCase(java.util.Locale.ROOT))
                .isEqualTo(NEAR_MAC);
        assertThat(snapshot.addresses()).contains(NEAR_MAC);
    }
}
