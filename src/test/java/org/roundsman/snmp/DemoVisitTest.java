package org.roundsman.snmp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.awaitility.Awaitility;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.measure.Fact;
import org.roundsman.measure.Facts;
import org.roundsman.measure.Metric;
import org.roundsman.measure.NetworkReading;
import org.roundsman.measure.Outcome;
import org.roundsman.measure.RadioReading;
import org.roundsman.measure.Values;
import org.snmp4j.PDU;
import org.snmp4j.smi.Counter32;
import org.snmp4j.smi.Counter64;
import org.snmp4j.smi.Integer32;
import org.snmp4j.smi.OID;
import org.snmp4j.smi.OctetString;
import org.snmp4j.smi.TimeTicks;

/** Visits to an invented access point; what it should give was worked out by hand from its objects. */
class DemoVisitTest {

    private static final Instant NOW = Instant.parse("2026-11-25T09:30:00Z");
    private static final String E = "1.3.6.1.4.1.32473.2.";
    private static final String IFX = "1.3.6.1.2.1.31.1.1.1.";

    private FakeAgent agent;
    private SnmpVisitor visitor;
    private DeviceMemory memory;
    private long begun;

    @BeforeEach
    void open() throws IOException {
        agent = new FakeAgent();
        agent.objects.putAll(DemoDevice.objects(2, 2));
        visitor = SnmpVisitor.open(
                new SnmpSettings(Duration.ofSeconds(1), 1, Duration.ofHours(1), 1_000, 1),
                ProfileSet.load(List.of()),
                Clock.fixed(NOW, ZoneOffset.UTC));
        memory = new DeviceMemory(agent.asV2());
        begun = System.nanoTime();
    }

    @AfterEach
    void close() {
        visitor.close();
        agent.close();
    }

    private Visit visit() {
        return visit(VisitKind.ROUND);
    }

    private Visit visit(VisitKind kind) {
        return visitor.visit(memory, kind).orTimeout(20, TimeUnit.SECONDS).join();
    }

    /** Lets the device's clock run so many seconds ahead of ours, within what we allow. */
    private void uptimeAfter(double seconds) {
        agent.uptime(8_640_000 + Math.round(seconds * 100));
    }

    @Test
    void readsEveryFigure() {
        Visit visit = visit();
        assertThat(visit.outcome()).isEqualTo(Outcome.ANSWERED);
        assertThat(visit.profiles()).containsExactly("demo", "host");
        assertThat(visit.at()).isEqualTo(NOW);
        Values device = visit.device();
        assertThat(device.get(Metric.CPU)).hasValue(17);
        assertThat(device.get(Metric.MEMORY)).hasValue(42);
        assertThat(device.get(Metric.UPTIME)).hasValue(86_400);
        assertThat(device.get(Metric.PORT_SPEED)).hasValue(1_000);
        assertThat(device.get(Metric.CLIENTS)).as("5 and 10 on the radios").hasValue(15);
        assertThat(device.raw(Metric.ROUND_TRIP)).isPositive();
        assertThat(device.has(Metric.PORT_IN)).as("a rate needs two visits").isFalse();
        assertThat(visit.radios()).extracting(RadioReading::number).containsExactly(1, 2);
        Values second = visit.radios().get(1).values();
        assertThat(second.get(Metric.BAND)).hasValue(5);
        assertThat(second.get(Metric.CHANNEL)).hasValue(36);
        assertThat(second.get(Metric.WIDTH)).hasValue(40);
        assertThat(second.get(Metric.TX_POWER)).hasValue(18.5);
        assertThat(second.get(Metric.NOISE)).hasValue(-92);
        assertThat(second.get(Metric.RADIO_CLIENTS)).hasValue(10);
        assertThat(second.raw(Metric.UTILISATION)).isEqualTo(50.196, within(0.001));
        assertThat(second.has(Metric.RETRIES)).isFalse();
        assertThat(visit.networks()).extracting(NetworkReading::ssid).containsExactly("Pebblegate Staff", "Guest 2");
        assertThat(visit.networks().get(0).values().get(Metric.NETWORK_CLIENTS))
                .as("3 and 5")
                .hasValue(8);
        assertThat(visit.remarks()).isEmpty();
    }

    @Test
    void readsEveryFact() {
        Facts facts = visit().facts().orElseThrow();
        assertThat(facts.values())
                .containsEntry(Fact.NAME, "ap-reception")
                .containsEntry(Fact.SERIAL, "TR33-000123")
                .containsEntry(Fact.MODEL, "TR-33")
                .containsEntry(Fact.FIRMWARE, "6.4.2")
                .containsEntry(Fact.HARDWARE_REVISION, "B")
                .containsEntry(Fact.BASE_MAC, "00:00:5e:00:53:01")
                .containsEntry(Fact.OBJECT_ID, "1.3.6.1.4.1.32473.1.3")
                .containsEntry(Fact.ENGINE_ID, "80007ed90401")
                .doesNotContainKey(Fact.MAKER);
        assertThat(facts.radios())
                .containsExactly(
                        new Facts.RadioFacts(1, "radio 1", "00:00:5e:00:53:11"),
                        new Facts.RadioFacts(2, "radio 2", "00:00:5e:00:53:12"));
        assertThat(facts.networks()).containsExactly("Pebblegate Staff", "Guest 2");
    }

    @Test
    void aRoundIsOneGetThatAsksNothingTwice() {
        visit();
        agent.heard.clear();
        Visit visit = visit();
        assertThat(visit.requests()).isEqualTo(1);
        assertThat(visit.facts()).isEmpty();
        assertThat(agent.heard).singleElement().satisfies(request -> {
            assertThat(request.getType()).isEqualTo(PDU.GET);
            List<OID> asked =
                    request.getVariableBindings().stream().map(b -> b.getOid()).toList();
            assertThat(asked)
                    .doesNotHaveDuplicates()
                    .doesNotContain(new OID(E + "1.1.0"), new OID("1.3.6.1.2.1.2.2.1.10.1"));
        });
    }

    @Test
    void surveysAskNothingTwiceEither() {
        visit();
        List<OID> asked = agent.heard.stream()
                .filter(request -> request.getType() == PDU.GET)
                .flatMap(request -> request.getVariableBindings().stream())
                .map(b -> b.getOid())
                .toList();
        assertThat(asked).doesNotHaveDuplicates();
    }

    @Test
    void aBigDeviceIsAskedInPortionsThatFitOneDatagram() {
        agent.objects.putAll(DemoDevice.objects(6, 8));
        visit();
        agent.heard.clear();
        Visit visit = visit();
        assertThat(visit.radios()).hasSize(6);
        assertThat(visit.networks()).hasSize(8);
        assertThat(agent.heard).hasSizeBetween(2, 4);
        // 1472 octets of UDP payload fit one Ethernet frame (RFC 894, RFC 768).
        assertThat(agent.replySizes).allMatch(size -> size <= 1_472);
    }

    @Test
    void ratesComeFromTheDevicesOwnClock() {
        visit();
        afterTwoSeconds();
        // 60 s for the device would not fit 2 s of ours; 3 s do, within the tolerance of 5 s.
        uptimeAfter(3);
        agent.with(IFX + "6.1", new Counter64(1_000_000_000_000L + 37_500))
                .with(IFX + "10.1", new Counter64(2_000_000_000_000L + 75_000))
                .with("1.3.6.1.2.1.2.2.1.14.1", new Counter32(15))
                .with("1.3.6.1.2.1.2.2.1.20.1", new Counter32(6))
                .with(E + "3.1.1.10.1", new Counter32(2_000))
                .with(E + "3.1.1.11.1", new Counter32(250));
        Visit visit = visit();
        assertThat(visit.device().get(Metric.PORT_IN)).hasValue(100_000);
        assertThat(visit.device().get(Metric.PORT_OUT)).hasValue(200_000);
        assertThat(visit.device().get(Metric.PORT_ERRORS)).hasValue(2);
        assertThat(visit.radios().get(0).values().get(Metric.RETRIES)).hasValue(15);
        assertThat(visit.radios().get(1).values().has(Metric.RETRIES))
                .as("nothing delivered, no share of it")
                .isFalse();
    }

    private void afterTwoSeconds() {
        Awaitility.await().pollInterval(Duration.ofMillis(50)).until(() -> System.nanoTime() - begun > 2_000_000_000L);
    }

    @Test
    void aRateAboveTheLineSpeedIsDropped() {
        visit();
        uptimeAfter(2);
        agent.with(IFX + "6.1", new Counter64(1_000_000_000_000L + 1_000_000_000L));
        Visit visit = visit();
        assertThat(visit.device().has(Metric.PORT_IN)).isFalse();
        assertThat(visit.device().get(Metric.PORT_OUT)).hasValue(0);
        assertThat(visit.remarks()).containsExactly("device.port_in came out above the port's speed and was dropped");
    }

    @Test
    void aDiscontinuityGivesNoRate() {
        visit();
        uptimeAfter(2);
        agent.with(IFX + "19.1", new TimeTicks(8_640_100)).with(IFX + "6.1", new Counter64(1_000_000_030_000L));
        Visit visit = visit();
        assertThat(visit.restarted()).isFalse();
        assertThat(visit.device().has(Metric.PORT_IN)).isFalse();
        assertThat(visit.radios().get(0).values().has(Metric.RADIO_CLIENTS)).isTrue();
    }

    @Test
    void aRestartIsToldAndTheFactsAreReadAgain() {
        visit();
        agent.uptime(150).with(E + "1.3.0", new OctetString("6.5.0")).with(IFX + "6.1", new Counter64(500));
        Visit visit = visit();
        assertThat(visit.restarted()).isTrue();
        assertThat(visit.device().has(Metric.PORT_IN)).isFalse();
        assertThat(visit.device().get(Metric.UPTIME)).hasValue(1.5);
        assertThat(visit.facts().orElseThrow().values()).containsEntry(Fact.FIRMWARE, "6.5.0");
        assertThat(visit().restarted()).isFalse();
    }

    @Test
    void missingIsNeverZero() {
        agent.objects.remove(new OID(E + "2.1.0"));
        agent.objects.remove(new OID(E + "3.1.1.9.1"));
        agent.objects.remove(new OID(E + "3.1.1.8.2"));
        Visit visit = visit();
        assertThat(visit.device().has(Metric.CPU)).isFalse();
        assertThat(visit.radios().get(0).values().has(Metric.UTILISATION)).isFalse();
        assertThat(visit.radios().get(1).values().has(Metric.UTILISATION)).isTrue();
        assertThat(visit.device().has(Metric.CLIENTS))
                .as("one radio did not say, so nobody knows the sum")
                .isFalse();
    }

    @Test
    void aRadioThatWentAwayIsMissedAtOnceAndForgottenNext() {
        visit();
        agent.objects.keySet().removeIf(oid -> oid.startsWith(new OID(E + "3.1.1")) && oid.last() == 2);
        assertThat(visit().radios()).extracting(RadioReading::number).containsExactly(1);
        Visit next = visit();
        assertThat(next.facts().orElseThrow().radios()).hasSize(1);
    }

    @Test
    void aTracedVisitKeepsEveryVariable() {
        Visit visit = visit(VisitKind.TRACED);
        assertThat(visit.raw())
                .contains(
                        new RawAnswer("1.3.6.1.2.1.1.3.0", "sysUpTime", "TimeTicks", "1 day, 0:00:00.00"),
                        new RawAnswer(E + "3.1.1.9.2", "radio.utilisation", "Integer32", "128"),
                        new RawAnswer(E + "1.5.0", "fact.base_mac", "OCTET STRING", "00 00 5e 00 53 01"));
        assertThat(visit.facts()).isPresent();
        assertThat(visit().raw()).isEmpty();
    }

    @Test
    void aNameThatIsNoTextAndAClockIn1970DoNoHarm() {
        agent.with("1.3.6.1.2.1.1.5.0", new OctetString(new byte[] {'a', 'p', (byte) 0xe4, 0}))
                .with(E + "4.1.1.1.1.1", new OctetString(new byte[] {(byte) 0xff, 'x'}))
                .with(E + "2.3.0", new OctetString(new byte[] {0x07, (byte) 0xb2, 1, 1, 0, 12, 0, 0, '+', 0, 0}));
        Visit visit = visit();
        assertThat(visit.facts().orElseThrow().values()).containsEntry(Fact.NAME, "ap\\xE4\\x00");
        assertThat(visit.networks()).extracting(NetworkReading::ssid).contains("\\xFFx");
        assertThat(visit.device().raw(Metric.CLOCK_OFFSET))
                .isEqualTo(Instant.parse("1970-01-01T00:12:00Z").getEpochSecond() - NOW.getEpochSecond());
        assertThat(visit.remarks())
                .containsExactly("the device's clock says 1970-01-01T00:12:00Z: set its time, best by NTP");
    }

    @Test
    void aBandThatTheProfileDoesNotListIsMissing() {
        agent.with(E + "3.1.1.3.1", new Integer32(9));
        assertThat(visit().radios().get(0).values().has(Metric.BAND)).isFalse();
    }
}
