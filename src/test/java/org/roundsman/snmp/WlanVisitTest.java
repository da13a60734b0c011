package org.roundsman.snmp;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.roundsman.measure.Fact;
import org.roundsman.measure.Facts;
import org.roundsman.measure.Metric;
import org.roundsman.measure.RadioReading;
import org.snmp4j.smi.Counter32;
import org.snmp4j.smi.Gauge32;
import org.snmp4j.smi.Integer32;
import org.snmp4j.smi.OID;
import org.snmp4j.smi.OctetString;

/**
 * A hand-made access point of no known maker that answers IEEE802dot11-MIB: object numbers from a copy of the module of
 * 2001, dot11AssociatedStationCount and the OFDM table from memory of later editions. And host tables beside it
 * (ENTITY-MIB, RFC 6933; HOST-RESOURCES-MIB, RFC 2790; IF-MIB, RFC 2863).
 */
class WlanVisitTest {

    private static final String DOT11 = "1.2.840.10036.";

    @TempDir
    Path folder;

    private FakeAgent agent;

    @BeforeEach
    void open() throws IOException {
        agent = new FakeAgent().asDevice("1.3.6.1.4.1.32473.77");
        radio(7, 5, 1, 6);
        radio(11, 4, 2, 36);
        agent.with(DOT11 + "1.1.1.9.7", new OctetString("Staff")).with(DOT11 + "1.1.1.9.11", new OctetString("Staff"));
    }

    private void radio(int ifIndex, int phyType, int last, int channel) {
        agent.with(DOT11 + "2.1.1.1." + ifIndex, new OctetString(new byte[] {0, 0, 0x5e, 0, 0x53, (byte) last}))
                .with(DOT11 + "2.2.1.4." + ifIndex, new Counter32(100))
                .with(DOT11 + "2.2.1.13." + ifIndex, new Counter32(1_000))
                .with(DOT11 + "2.2.1.16." + ifIndex, new Counter32(last * 4L))
                .with(DOT11 + "4.1.1.1." + ifIndex, new Integer32(phyType))
                .with(DOT11 + (phyType == 4 ? "4.11.1.1." : "4.5.1.1.") + ifIndex, new Integer32(channel));
    }

    @AfterEach
    void close() {
        agent.close();
    }

    private Visit visit(List<Path> folders) throws IOException {
        try (SnmpVisitor visitor =
                SnmpVisitor.open(SnmpSettings.defaults(), ProfileSet.load(folders), Clock.systemUTC())) {
            return visitor.visit(new DeviceMemory(agent.asV2()), VisitKind.ROUND)
                    .orTimeout(20, TimeUnit.SECONDS)
                    .join();
        }
    }

    private Visit visit() throws IOException {
        return visit(List.of());
    }

    @Test
    void radiosAreNumberedByTheirInterfaces() throws IOException {
        Visit visit = visit();
        assertThat(visit.profiles()).containsExactly("wlan-ieee", "host");
        assertThat(visit.radios()).extracting(RadioReading::number).containsExactly(1, 2);
        assertThat(visit.facts().orElseThrow().radios())
                .containsExactly(
                        new Facts.RadioFacts(1, "", "00:00:5e:00:53:01"),
                        new Facts.RadioFacts(2, "", "00:00:5e:00:53:02"));
        var first = visit.radios().get(0).values();
        var second = visit.radios().get(1).values();
        assertThat(first.get(Metric.BAND)).hasValue(2.4);
        assertThat(first.get(Metric.CHANNEL)).hasValue(6);
        assertThat(first.get(Metric.RADIO_CLIENTS)).hasValue(4);
        assertThat(second.get(Metric.BAND)).hasValue(5);
        assertThat(second.get(Metric.CHANNEL)).hasValue(36);
        assertThat(visit.device().get(Metric.CLIENTS)).hasValue(12);
        assertThat(first.has(Metric.UTILISATION))
                .as("no published object carries it")
                .isFalse();
        assertThat(visit.facts().orElseThrow().networks()).containsExactly("Staff");
        assertThat(visit.networks()).as("nothing is measured of it").isEmpty();
    }

    @Test
    void aMakersOwnObjectIsAMatterOfLines() throws IOException {
        Files.writeString(folder.resolve("maker.yaml"), """
                profile: maker
                select: {object-id: 1.3.6.1.4.1.32473.77}
                tables:
                  - entry: 1.3.6.1.4.1.32473.77.5.1
                    index: [radio]
                    columns:
                      radio.utilisation: {column: 3, as: bss-load}
                      radio.clients: 4
                """);
        agent.with("1.3.6.1.4.1.32473.77.5.1.3.1", new Gauge32(51))
                .with("1.3.6.1.4.1.32473.77.5.1.4.1", new Gauge32(9));
        Visit visit = visit(List.of(folder));
        assertThat(visit.profiles()).containsExactly("maker", "wlan-ieee", "host");
        var first = visit.radios().get(0).values();
        assertThat(first.get(Metric.UTILISATION)).hasValue(20);
        assertThat(first.get(Metric.RADIO_CLIENTS))
                .as("the more specific profile wins")
                .hasValue(9);
        assertThat(visit.radios().get(1).values().get(Metric.RADIO_CLIENTS))
                .as("and leaves to the other what it does not know")
                .hasValue(8);
    }

    @Test
    void tellsTheKindOfDevice() {
        ProfileSet profiles = ProfileSet.load(List.of());
        assertThat(profiles.names()).containsExactly("demo", "host", "wlan-ieee");
        assertThat(profiles.kindOf(List.of("demo", "host"), "1.3.6.1.4.1.32473.1.20"))
                .contains("switch");
        assertThat(profiles.kindOf(List.of("demo", "host"), "1.3.6.1.4.1.32473.1.2"))
                .contains("access point");
        assertThat(profiles.kindOf(List.of("wlan-ieee", "host"), "1.3.6.1.4.1.32473.77"))
                .contains("access point");
        assertThat(profiles.kindOf(List.of("host"), "1.3.6.1.4.1.8072.3.2.10")).isEmpty();
    }

    @Test
    void brokenFilesAreAllNamed() throws IOException {
        Files.writeString(folder.resolve("a.yaml"), "profile: a\nscalars: {device.cpuu: 1.3.6.1.0}\n");
        Files.writeString(folder.resolve("b.yaml"), "profile: b\ntabels: []\n");
        org.assertj.core.api.Assertions.assertThatThrownBy(
                        () -> ProfileSet.load(List.of(folder, folder.resolve("none"))))
                .isInstanceOf(ProfileException.class)
                .hasMessageContaining(
                        "a.yaml line 2, scalars.device.cpuu: there is no such measurement; did you mean device.cpu?")
                .hasMessageContaining("b.yaml line 2, tabels: there is no such key; did you mean tables?")
                .hasMessageContaining("none: the folder of profiles cannot be read");
    }

    /** entPhysicalClass chassis(3); RFC 6933 has the chassis at the top, or first in a stack. */
    @Test
    void serialAndModelComeFromTheChassis() throws IOException {
        String entity = "1.3.6.1.2.1.47.1.1.1.1.";
        agent.with(entity + "5.1", new Integer32(11)).with(entity + "11.1", new OctetString("stack"));
        agent.with(entity + "5.2", new Integer32(3))
                .with(entity + "9.2", new OctetString("boot 1.1"))
                .with(entity + "10.2", new OctetString(""))
                .with(entity + "11.2", new OctetString("SN-000002"))
                .with(entity + "12.2", new OctetString("Tamarack Radio"))
                .with(entity + "13.2", new OctetString("TR-22"));
        agent.with(entity + "5.3", new Integer32(6)).with(entity + "11.3", new OctetString("power supply"));
        assertThat(visit().facts().orElseThrow().values())
                .containsEntry(Fact.SERIAL, "SN-000002")
                .containsEntry(Fact.MODEL, "TR-22")
                .containsEntry(Fact.MAKER, "Tamarack Radio")
                .containsEntry(Fact.FIRMWARE, "boot 1.1");
    }

    @Test
    void memoryAndProcessorComeFromTheHost() throws IOException {
        String storage = "1.3.6.1.2.1.25.2.3.1.";
        agent.with(storage + "2.1", new OID("1.3.6.1.2.1.25.2.1.4"))
                .with(storage + "5.1", new Integer32(10))
                .with(storage + "6.1", new Integer32(1))
                .with(storage + "2.4", new OID("1.3.6.1.2.1.25.2.1.2"))
                .with(storage + "5.4", new Integer32(65_536))
                .with(storage + "6.4", new Integer32(49_152));
        for (int i = 1; i <= 4; i++) {
            agent.with("1.3.6.1.2.1.25.3.3.1.2." + i, new Integer32(10 * i));
        }
        Visit visit = visit();
        assertThat(visit.device().get(Metric.MEMORY)).hasValue(75);
        assertThat(visit.device().get(Metric.CPU)).hasValue(25);
    }

    @Test
    void noMemorySizeGivesNoShare() throws IOException {
        String storage = "1.3.6.1.2.1.25.2.3.1.";
        agent.with(storage + "2.4", new OID("1.3.6.1.2.1.25.2.1.2"))
                .with(storage + "5.4", new Integer32(0))
                .with(storage + "6.4", new Integer32(0));
        assertThat(visit().device().has(Metric.MEMORY)).isFalse();
    }

    /** RFC 2863: ifSpeed in bit/s, where ifHighSpeed is not there. */
    @Test
    void theUplinkFallsBackToTheOlderTable() throws IOException {
        String entry = "1.3.6.1.2.1.2.2.1.";
        agent.with(entry + "3.1", new Integer32(24))
                .with(entry + "8.1", new Integer32(1))
                .with(entry + "3.2", new Integer32(6))
                .with(entry + "8.2", new Integer32(2))
                .with(entry + "3.3", new Integer32(6))
                .with(entry + "8.3", new Integer32(1))
                .with(entry + "5.2", new Gauge32(10_000_000))
                .with(entry + "5.3", new Gauge32(100_000_000));
        assertThat(visit().device().get(Metric.PORT_SPEED)).hasValue(100);
    }
}
