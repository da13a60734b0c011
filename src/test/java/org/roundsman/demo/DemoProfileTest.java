package org.roundsman.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Clock;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.measure.Fact;
import org.roundsman.measure.Metric;
import org.roundsman.measure.Outcome;
import org.roundsman.measure.RadioReading;
import org.roundsman.snmp.Agent;
import org.roundsman.snmp.DeviceMemory;
import org.roundsman.snmp.ProfileSet;
import org.roundsman.snmp.SnmpAccess;
import org.roundsman.snmp.SnmpSettings;
import org.roundsman.snmp.SnmpVisitor;
import org.roundsman.snmp.Visit;
import org.roundsman.snmp.VisitKind;

/** The invented maker's objects are written down twice, by its agents and by the profile: both must agree. */
class DemoProfileTest {

    private static final int PORT = 26_261;

    private record Round(DemoDevice device, Visit visit) {}

    @Test
    void whatTheAgentsServeIsWhatTheProfileReads() throws Exception {
        DemoFleet fleet = DemoFleet.of(DemoFleet.SMALLEST, DemoFleet.USUAL_SEED, PORT);
        try (AgentHost agents = AgentHost.start(fleet, Faults.byHandOnly(fleet, Clock.systemUTC()), Clock.systemUTC());
                SnmpVisitor visitor =
                        SnmpVisitor.open(SnmpSettings.defaults(), ProfileSet.load(List.of()), Clock.systemUTC())) {
            List<Round> rounds = rounds(fleet, visitor);
            assertThat(agents.answers()).isPositive();
            List<Round> answered = rounds.stream()
                    .filter(r -> r.visit().outcome() == Outcome.ANSWERED)
                    .toList();
            assertThat(answered).hasSizeGreaterThan(fleet.devices().size() - 20);
            assertThat(answered).allSatisfy(DemoProfileTest::isTheDevice);
        }
    }

    /** The profile that the guide gives as one answer: what it reads is what snmpget shows, in the units of the service. */
    @Test
    void theExampleProfileReadsTheOtherMakersUnit() throws Exception {
        SetClock clock = new SetClock("2026-11-25T11:00:00Z");
        DemoFleet fleet = DemoFleet.prospect(PORT);
        DemoDevice device = fleet.devices().stream()
                .filter(d -> d.model() == DemoModel.GI_7)
                .findFirst()
                .orElseThrow();
        ProfileSet profiles = ProfileSet.load(List.of(Files.createDirectories(Path.of("target/example-profiles"))));
        try (AgentHost agents = AgentHost.start(fleet, Faults.byHandOnly(fleet, clock), clock);
                SnmpVisitor without = SnmpVisitor.open(SnmpSettings.defaults(), profiles, Clock.systemUTC())) {
            Visit plain = visit(without, device);
            assertThat(plain.outcome()).isEqualTo(Outcome.ANSWERED);
            assertThat(plain.radios()).isEmpty();
            Files.copy(
                    Path.of("docs/examples/gorsehill.yaml"),
                    Path.of("target/example-profiles/gorsehill.yaml"),
                    StandardCopyOption.REPLACE_EXISTING);
            profiles = ProfileSet.load(List.of(Path.of("target/example-profiles")));
            try (SnmpVisitor with = SnmpVisitor.open(SnmpSettings.defaults(), profiles, Clock.systemUTC())) {
                isRead(visit(with, device), device);
            }
            assertThat(agents.answers()).isPositive();
        } finally {
            Files.deleteIfExists(Path.of("target/example-profiles/gorsehill.yaml"));
        }
    }

    private static Visit visit(SnmpVisitor visitor, DemoDevice device) {
        return visitor.visit(new DeviceMemory(agent(device)), VisitKind.ROUND)
                .orTimeout(60, TimeUnit.SECONDS)
                .join();
    }

    private static void isRead(Visit visit, DemoDevice device) {
        String row = "1.3.6.1.4.1.32473.9.2.2.1.";
        assertThat(visit.remarks()).isEmpty();
        assertThat(visit.facts().orElseThrow().values()).containsEntry(Fact.SERIAL, device.serial());
        assertThat(visit.radios()).hasSize(2);
        for (RadioReading radio : visit.radios()) {
            String at = "." + radio.number();
            NetSnmp.Said said = NetSnmp.ask("snmpget", device, row + 4 + at, row + 5 + at, row + 7 + at);
            assertThat(radio.values().raw(Metric.RADIO_CLIENTS)).isEqualTo(said.number(row + 4 + at));
            assertThat(radio.values().raw(Metric.UTILISATION))
                    .isEqualTo(said.number(row + 5 + at) / 10.0, org.assertj.core.api.Assertions.within(1e-9));
            assertThat(radio.values().raw(Metric.TX_POWER)).isEqualTo(said.number(row + 7 + at));
        }
        assertThat(visit.networks()).hasSize(2);
    }

    private static List<Round> rounds(DemoFleet fleet, SnmpVisitor visitor) {
        List<CompletableFuture<Round>> visits = fleet.devices().stream()
                .map(device -> visitor.visit(new DeviceMemory(agent(device)), VisitKind.ROUND)
                        .thenApply(visit -> new Round(device, visit)))
                .toList();
        return visits.stream()
                .map(visit -> visit.orTimeout(60, TimeUnit.SECONDS).join())
                .toList();
    }

    private static Agent agent(DemoDevice device) {
        return new Agent(device.host(), device.port(), access(device.accepts()));
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

    private static void isTheDevice(Round round) {
        DemoDevice device = round.device();
        Visit visit = round.visit();
        boolean lostTime = device.standing().contains(Fault.CLOCK_1970);
        assertThat(visit.remarks()).as(device.fullName()).hasSize(lostTime ? 1 : 0);
        assertThat(visit.remarks()).allMatch(remark -> remark.startsWith("the device's clock says 1970-"));
        assertThat(visit.facts().orElseThrow().values())
                .containsEntry(Fact.NAME, device.fullName())
                .containsEntry(Fact.SERIAL, device.serial());
        assertThat(visit.device().has(Metric.PORT_SPEED)).isTrue();
        assertThat(visit.radios())
                .extracting(RadioReading::number)
                .containsExactlyElementsOf(
                        device.radios().stream().map(DemoRadio::number).toList());
        for (int i = 0; i < device.radios().size(); i++) {
            DemoRadio radio = device.radios().get(i);
            var values = visit.radios().get(i).values();
            // a radio that sees radar is on 36 for a while
            assertThat(values.raw(Metric.CHANNEL))
                    .isIn((double) radio.channel(), radio.sharesWithRadar() ? 36.0 : radio.channel());
            assertThat(values.get(Metric.WIDTH)).hasValue(radio.width());
            assertThat(values.raw(Metric.TX_POWER))
                    .isEqualTo(radio.powerTenths() / 10.0, org.assertj.core.api.Assertions.within(1e-9));
            boolean off = radio.number() == 1 && device.standing().contains(Fault.RADIO_OFF);
            assertThat(values.has(Metric.UTILISATION)).as(device.fullName()).isEqualTo(!off);
            assertThat(values.has(Metric.RADIO_CLIENTS)).isTrue();
        }
        if (device.model().kind() == DeviceKind.ACCESS_POINT) {
            assertThat(visit.device().has(Metric.CLIENTS)).isTrue();
            assertThat(visit.networks()).isNotEmpty();
        }
    }
}
