package org.roundsman.topology;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.roundsman.demo.AgentHost;
import org.roundsman.demo.Cabling;
import org.roundsman.demo.DemoCredential;
import org.roundsman.demo.DemoDevice;
import org.roundsman.demo.DemoFleet;
import org.roundsman.demo.Faults;
import org.roundsman.demo.PowerFeed;
import org.roundsman.measure.Outcome;
import org.roundsman.snmp.Agent;
import org.roundsman.snmp.DeviceMemory;
import org.roundsman.snmp.ProfileSet;
import org.roundsman.snmp.SnmpAccess;
import org.roundsman.snmp.SnmpSettings;
import org.roundsman.snmp.SnmpVisitor;
import org.roundsman.snmp.TableReading;
import org.roundsman.topology.find.Evidence;
import org.roundsman.topology.find.Finding;
import org.roundsman.topology.find.Member;
import org.roundsman.topology.read.Decoding;
import org.roundsman.topology.read.Snapshot;
import org.roundsman.topology.read.Tables;

/**
 * Every site of the invented fleet, read over SNMP, against the cables that its inventor laid: sites with LLDP, with
 * forwarding tables only, and with one forwarding table per VLAN. The agents' tables are not the decoder's.
 */
class DemoWiringTest {

    private static final Instant AT = Instant.parse("2026-11-25T10:00:00Z");

    private final DemoFleet fleet = DemoFleet.of(250, 11, 26_171);
    private final Clock clock = Clock.fixed(AT, java.time.ZoneOffset.UTC);
    private final Faults faults = new Faults(fleet, clock);
    private final Cabling cabling = Cabling.of(fleet);

    private record Read(DemoDevice device, Snapshot snapshot) {}

    @Test
    void everyPlaceThatIsFoundIsTheOneThatWasCabled() throws IOException {
        Map<Integer, List<Read>> sites = read();
        int points = 0;
        int placed = 0;
        Map<How, Integer> how = new TreeMap<>();
        for (List<Read> site : sites.values()) {
            Map<Long, Attachment> places = Finding.places(evidence(site));
            for (Read read : site) {
                Attachment place = places.get((long) read.device().number());
                points += read.device().isAccessPoint() ? 1 : 0;
                if (place.known()) {
                    compare(read.device(), place);
                    placed += read.device().isAccessPoint() ? 1 : 0;
                    how.merge(place.how(), 1, Integer::sum);
                }
            }
        }
        assertThat(points).isGreaterThan(200);
        assertThat(placed).as("of " + points + " access points, by " + how).isGreaterThan(points * 9 / 10);
        assertThat(how).containsKeys(How.LLDP, How.FORWARDING);
    }

    /** Power of the port, where the port feeds the device: RFC 3621 gives the class while it delivers. */
    @Test
    void powerIsFoundAtThePortThatFeedsTheDevice() throws IOException {
        int fed = 0;
        for (List<Read> site : read().values()) {
            Map<Integer, Snapshot> byNumber =
                    site.stream().collect(Collectors.toMap(r -> r.device().number(), Read::snapshot));
            for (Read read : site) {
                var up = cabling.up(read.device());
                Snapshot above = up.map(link -> byNumber.get(link.above())).orElse(null);
                if (above == null || up.get().feed() != PowerFeed.PORT) {
                    continue;
                }
                Power power = above.ports().stream()
                        .filter(port ->
                                port.bridgePort().equals(OptionalInt.of(up.get().abovePort())))
                        .flatMap(port -> port.power().stream())
                        .findFirst()
                        .orElseThrow();
                assertThat(power.state()).as(read.device().name()).isEqualTo(PowerState.DELIVERING);
                assertThat(power.powerClass())
                        .as(read.device().name())
                        .hasValue(read.device().model().poeClass());
                assertThat(power.match()).isEqualTo(PowerMatch.BRIDGE_PORT);
                fed++;
            }
        }
        assertThat(fed).isGreaterThan(100);
    }

    private void compare(DemoDevice device, Attachment place) {
        var cable = cabling.up(device).orElseThrow();
        assertThat(place.parentId()).as(device + " " + place).hasValue(cable.above());
        place.port().ifPresent(port -> assertThat(ports.get(cable.above()).get(port))
                .as(device.name() + " " + place)
                .isEqualTo(OptionalInt.of(cable.abovePort())));
    }

    /** By device and ifIndex the number on the front plate. */
    private final Map<Integer, Map<Integer, OptionalInt>> ports = new HashMap<>();

    private Map<Integer, List<Read>> read() throws IOException {
        SnmpSettings settings = new SnmpSettings(Duration.ofSeconds(2), 2, Duration.ofHours(1), 20_000, 2);
        Map<Integer, List<Read>> sites = new TreeMap<>();
        try (AgentHost host = AgentHost.start(fleet, faults, clock);
                SnmpVisitor visitor = SnmpVisitor.open(settings, ProfileSet.load(List.of()), clock)) {
            for (DemoDevice device : fleet.devices()) {
                Agent agent = new Agent(device.host(), device.port(), access(device.accepts()));
                TableReading reading = visitor.tables(new DeviceMemory(agent), Tables.of(device.kind()), 20_000)
                        .join();
                if (reading.outcome() == Outcome.ANSWERED) {
                    assertThat(reading.remarks()).as(device.name()).isEmpty();
                    Snapshot snapshot = Decoding.of(reading);
                    sites.computeIfAbsent(device.site(), made -> new ArrayList<>())
                            .add(new Read(device, snapshot));
                    Map<Integer, OptionalInt> numbers = new HashMap<>();
                    // A gateway is no bridge: its interfaces are numbered as its plate is.
                    snapshot.ports()
                            .forEach(port -> numbers.put(
                                    port.number(),
                                    port.bridgePort().isPresent() ? port.bridgePort() : OptionalInt.of(port.number())));
                    ports.put(device.number(), numbers);
                }
            }
            assertThat(host.answers()).isGreaterThan(0);
        }
        return sites;
    }

    private static SnmpAccess access(DemoCredential credential) {
        if (credential instanceof DemoCredential.Community c) {
            return new SnmpAccess.Community(c.version(), c.community());
        }
        DemoCredential.User user = (DemoCredential.User) credential;
        return new SnmpAccess.User(
                user.userName(),
                SnmpAccess.Level.AUTH_PRIV,
                SnmpAccess.AuthProtocol.SHA256,
                user.authPassword(),
                SnmpAccess.PrivProtocol.AES128,
                user.privPassword());
    }

    private static Evidence evidence(List<Read> site) {
        List<Member> members = new ArrayList<>();
        List<NeighbourSeen> neighbours = new ArrayList<>();
        List<Evidence.Learnt> learnt = new ArrayList<>();
        Set<String> macs = new HashSet<>();
        for (Read read : site) {
            Snapshot snapshot = read.snapshot();
            macs.addAll(snapshot.addresses());
            members.add(new Member(
                    read.device().number(),
                    read.device().kind(),
                    read.device().name(),
                    read.device().host(),
                    snapshot.systemName(),
                    snapshot.chassis(),
                    snapshot.addresses(),
                    snapshot.ports()));
        }
        for (Read read : site) {
            long id = read.device().number();
            read.snapshot()
                    .neighbours()
                    .forEach(heard -> neighbours.add(new NeighbourSeen(
                            id, heard.port(), heard.localPort(), heard.portBy(), heard.announced(), AT, AT, 0)));
            read.snapshot().learnt().forEach((mac, on) -> on.stream()
                    .filter(port -> macs.contains(mac))
                    .forEach(port -> learnt.add(new Evidence.Learnt(id, mac, port, AT, AT, 0))));
        }
        return new Evidence(members, neighbours, learnt, List.of(), 3, 64);
    }

    /** Else the first test would not show what it says. */
    @Test
    void theFleetHasSitesOfEachManner() {
        assertThat(fleet.devices().stream().map(Cabling::manner).distinct()).hasSize(3);
    }
}
