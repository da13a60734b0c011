package org.roundsman.topology.read;

import static org.assertj.core.api.Assertions.assertThat;
import static org.roundsman.topology.TableFixture.ADDRESS;
import static org.roundsman.topology.TableFixture.BRIDGE_PORT;
import static org.roundsman.topology.TableFixture.FDB;
import static org.roundsman.topology.TableFixture.IF;
import static org.roundsman.topology.TableFixture.IFX;
import static org.roundsman.topology.TableFixture.LOCAL_PORT;
import static org.roundsman.topology.TableFixture.NEIGHBOUR;
import static org.roundsman.topology.TableFixture.POWER;
import static org.roundsman.topology.TableFixture.QFDB;
import static org.roundsman.topology.TableFixture.SUPPLY;

import java.time.Instant;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.topology.LldpId;
import org.roundsman.topology.NeighbourSeen.Ability;
import org.roundsman.topology.NeighbourSeen.Announced;
import org.roundsman.topology.Port;
import org.roundsman.topology.PortState;
import org.roundsman.topology.Power;
import org.roundsman.topology.PowerMatch;
import org.roundsman.topology.PowerState;
import org.roundsman.topology.TableFixture;

/**
 * Numbers and meanings from LLDP-MIB (IEEE 802.1AB-2005), BRIDGE-MIB (RFC 4188), IF-MIB (RFC 2863) and POWER-ETHERNET-MIB
 * (RFC 3621); dot1qTpFdbPort of Q-BRIDGE-MIB (RFC 4363) from memory.
 */
class DecodingTest {

    private static final String SWITCH = "00:00:5e:00:53:f0";
    private static final Instant AT = Instant.parse("2026-11-25T20:00:00Z");

    private static Snapshot decode(TableFixture tables) {
        return Decoding.of(tables.reading(DeviceKind.NETWORK_SWITCH, AT));
    }

    private static Port port(Snapshot snapshot, int number) {
        return snapshot.ports().stream()
                .filter(port -> port.number() == number)
                .findFirst()
                .orElseThrow();
    }

    /** RFC 3621: the value is the class and one more, valid only while the port delivers; no class above 4. */
    @ParameterizedTest
    @CsvSource({"3, 5, 4", "3, 1, 0", "3, 6, -1", "2, 5, -1", "1, 3, -1", "4, 4, -1", "3, 0, -1"})
    void thePowerClassIsOneLessThanItsValueAndOnlyWhileDelivering(int status, int value, int expected) {
        assertThat(Power.classOf(PowerState.of(status), value))
                .isEqualTo(expected < 0 ? OptionalInt.empty() : OptionalInt.of(expected));
    }

    @Test
    void powerIsReadOfItsPort() {
        Snapshot snapshot = decode(TableFixture.aSwitch(SWITCH, 8)
                .power(7, 3, 5)
                .power(6, 2, 5)
                .power(5, 4, 1)
                .with(SUPPLY + "2.1", 370)
                .with(SUPPLY + "3.1", 1)
                .with(SUPPLY + "4.1", 120));
        Power seven = port(snapshot, 10_007).power().orElseThrow();
        assertThat(seven.words()).isEqualTo("power delivered, class 4");
        assertThat(seven.match()).isEqualTo(PowerMatch.BRIDGE_PORT);
        assertThat(port(snapshot, 10_006).power().orElseThrow().words()).isEqualTo("no power drawn");
        assertThat(port(snapshot, 10_005).power().orElseThrow().faulty()).isTrue();
        assertThat(port(snapshot, 10_004).power()).isEmpty();
        assertThat(snapshot.supplies().get(0).words()).isEqualTo("on, 120 of 370 W");
    }

    /** Admin false and status disabled is no fault; admin true and fault is one. */
    @Test
    void aPortThatMayNotDeliverHasNoFault() {
        TableFixture tables = TableFixture.aSwitch(SWITCH, 2).power(1, 1, 1).power(2, 6, 1);
        tables.with(POWER + "3.1.1", 2);
        Snapshot snapshot = decode(tables);
        assertThat(port(snapshot, 10_001).power().orElseThrow().faulty()).isFalse();
        assertThat(port(snapshot, 10_002).power().orElseThrow().faulty()).isTrue();
    }

    /** No standard object joins a PoE port of a stack to an interface: the order is taken, and said. */
    @Test
    void powerOfAStackIsMatchedByOrderAndSaysSo() {
        TableFixture tables = TableFixture.aSwitch(SWITCH, 4);
        for (String index : new String[] {"1.1", "1.2", "2.1", "2.2"}) {
            tables.with(POWER + "3." + index, 1).with(POWER + "6." + index, index.equals("2.1") ? 3 : 2);
            tables.with(POWER + "10." + index, 3);
        }
        Power third = port(decode(tables), 10_003).power().orElseThrow();
        assertThat(third.match()).isEqualTo(PowerMatch.ORDER);
        assertThat(third.group()).isEqualTo(2);
        assertThat(third.state()).isEqualTo(PowerState.DELIVERING);
    }

    /** Instance 1.0.8802.1.1.2.1.4.1.1.9.0.7.1 is time mark 0, local port 7, neighbour 1, column sysName. */
    @Test
    void aNeighbourIsHeardOnTheLocalPortInItsIndex() {
        Snapshot snapshot = decode(TableFixture.aSwitch(SWITCH, 8)
                .hears(7, "00:00:5e:00:53:01", "ap-lobby")
                .with(ADDRESS + "0.7.1.1.4.192.0.2.17", 2));
        Snapshot.Heard heard = snapshot.neighbours().get(0);
        assertThat(heard.localPort()).isEqualTo(7);
        assertThat(heard.port()).isEqualTo(10_007);
        assertThat(heard.announced().systemName()).isEqualTo("ap-lobby");
        assertThat(heard.announced().chassis().mac()).contains("00:00:5e:00:53:01");
        assertThat(heard.announced().addresses()).containsExactly("192.0.2.17");
        assertThat(snapshot.whole().offered().lldp()).isTrue();
    }

    /** BITS: number 0 is the most significant bit of the first octet. */
    @ParameterizedTest
    @CsvSource({
        "16, WLAN_ACCESS_POINT",
        "48, BRIDGE WLAN_ACCESS_POINT",
        "40, BRIDGE ROUTER",
        "0, ''",
        "128, OTHER",
        "1, STATION_ONLY"
    })
    void abilitiesAreBitsFromTheLeft(int octet, String expected) {
        TableFixture tables = TableFixture.aSwitch(SWITCH, 2)
                .hears(1, "00:00:5e:00:53:01", "")
                .octets(NEIGHBOUR + "12.0.1.1", new byte[] {(byte) octet, 0});
        Announced announced = decode(tables).neighbours().get(0).announced();
        StringBuilder able = new StringBuilder();
        for (Ability ability : Ability.values()) {
            able.append(announced.able(ability) ? " " + ability : "");
        }
        assertThat(able.toString().strip()).isEqualTo(expected);
    }

    /** macAddress is 4 for a chassis and 3 for a port; networkAddress 5 and 4. */
    @Test
    void theSameNumberMeansAnotherKindForAChassisAndForAPort() {
        byte[] mac = TableFixture.octets("00:00:5e:00:53:01");
        byte[] address = {1, (byte) 192, 0, 2, 17};
        assertThat(LldpId.chassis(4, mac).mac()).contains("00:00:5e:00:53:01");
        assertThat(LldpId.port(3, mac).mac()).contains("00:00:5e:00:53:01");
        assertThat(LldpId.port(4, mac).mac()).isEmpty();
        assertThat(LldpId.chassis(3, mac).mac()).isEmpty();
        assertThat(LldpId.chassis(5, address).address()).contains("192.0.2.17");
        assertThat(LldpId.port(4, address).address()).contains("192.0.2.17");
        assertThat(LldpId.chassis(6, "ge-0/0/1".getBytes(java.nio.charset.StandardCharsets.UTF_8))
                        .what())
                .isEqualTo(LldpId.What.INTERFACE_NAME);
        assertThat(LldpId.port(5, "ge-0/0/1".getBytes(java.nio.charset.StandardCharsets.UTF_8))
                        .what())
                .isEqualTo(LldpId.What.INTERFACE_NAME);
        assertThat(LldpId.chassis(9, mac).what()).isEqualTo(LldpId.What.UNKNOWN);
    }

    /** Some devices write an address as text where octets belong (common practice, no source). */
    @ParameterizedTest
    @CsvSource({"00:00:5E:00:53:01", "00-00-5e-00-53-01", "0000.5e00.5301", "00005e005301"})
    void anAddressWrittenAsTextIsUnderstood(String text) {
        byte[] octets = text.getBytes(java.nio.charset.StandardCharsets.US_ASCII);
        assertThat(LldpId.chassis(4, octets).mac()).contains("00:00:5e:00:53:01");
        assertThat(LldpId.chassis(7, octets).mac()).contains("00:00:5e:00:53:01");
        assertThat(LldpId.chassis(1, octets).mac()).isEmpty();
    }

    /** On a bridge LLDP's number is dot1dBasePort: port 7 with dot1dBasePortIfIndex.7 = 10007 is interface 10007, not 7. */
    @Test
    void withoutALocalTableABridgesNumberIsTheBridgePort() {
        TableFixture tables = TableFixture.aSwitch(SWITCH, 8)
                .without(LOCAL_PORT)
                .with(IF + "3.7", 6)
                .with(IF + "2.7", "management")
                .hears(7, "00:00:5e:00:53:01", "");
        Snapshot.Heard heard = decode(tables).neighbours().get(0);
        assertThat(heard.port()).isEqualTo(10_007);
        assertThat(heard.portBy()).isEqualTo("bridge port 7");
    }

    @Test
    void elsewhereItIsTheInterface() {
        TableFixture tables = TableFixture.aSwitch(SWITCH, 0)
                .with(IF + "3.2", 6)
                .with(IF + "2.2", "eth1")
                .hears(2, "00:00:5e:00:53:01", "");
        Snapshot.Heard heard = decode(tables).neighbours().get(0);
        assertThat(heard.port()).isEqualTo(2);
        assertThat(heard.portBy()).isEqualTo("interface number 2");
    }

    /** Bridges that number LLDP ports by ifIndex are found out by what LLDP says of the port. */
    @Test
    void whatLldpSaysOfThePortDecidesBetweenBothNumbers() {
        TableFixture tables = TableFixture.aSwitch(SWITCH, 8)
                .without(LOCAL_PORT)
                .with(IF + "3.7", 6)
                .with(IF + "2.7", "ge-7")
                .with(IFX + "1.7", "ge-7")
                .with(LOCAL_PORT + "2.7", 5)
                .with(LOCAL_PORT + "3.7", "ge-7")
                .hears(7, "00:00:5e:00:53:01", "");
        Snapshot.Heard heard = decode(tables).neighbours().get(0);
        assertThat(heard.port()).isEqualTo(7);
        assertThat(heard.portBy()).contains("identifier of the port").contains("ge-7");
    }

    @Test
    void aNumberThatMeansNoInterfaceIsKeptAsItIs() {
        TableFixture tables = TableFixture.aSwitch(SWITCH, 2)
                .hears(55, "00:00:5e:00:53:01", "")
                .with(LOCAL_PORT + "2.55", 7)
                .with(LOCAL_PORT + "3.55", "uplink module");
        Snapshot snapshot = decode(tables);
        assertThat(snapshot.neighbours().get(0).port()).isEqualTo(-55);
        assertThat(port(snapshot, -55).title()).isEqualTo("port uplink module");
    }

    /** RFC 4502, TimeFilter: a row may come once for each time mark. */
    @Test
    void aNeighbourThatComesForSeveralTimeMarksIsOne() {
        TableFixture tables = TableFixture.aSwitch(SWITCH, 2);
        for (int mark : new int[] {0, 100, 4_000}) {
            String index = mark + ".1.1";
            tables.with(NEIGHBOUR + "4." + index, 7).with(NEIGHBOUR + "5." + index, "box");
            tables.with(NEIGHBOUR + "6." + index, 7).with(NEIGHBOUR + "7." + index, "p");
            tables.with(NEIGHBOUR + "9." + index, "name " + mark);
        }
        assertThat(decode(tables).neighbours()).hasSize(1);
        assertThat(decode(tables).neighbours().get(0).announced().systemName()).isEqualTo("name 4000");
    }

    /** 00:00:5E:00:53:0A is instance …17.4.3.1.2.0.0.94.0.83.10; port 0 means that the place is not known. */
    @Test
    void learntAddressesAreReadFromTheIndex() {
        Snapshot snapshot = decode(TableFixture.aSwitch(SWITCH, 8)
                .with(FDB + "2.0.0.94.0.83.10", 7)
                .with(FDB + "3.0.0.94.0.83.10", 3)
                .with(FDB + "2.0.0.94.0.83.11", 0)
                .with(FDB + "3.0.0.94.0.83.11", 3)
                .with(FDB + "2.0.0.94.0.83.12", 3)
                .with(FDB + "3.0.0.94.0.83.12", 4));
        assertThat(snapshot.learnt()).containsOnlyKeys("00:00:5e:00:53:0a");
        assertThat(snapshot.learnt().get("00:00:5e:00:53:0a")).containsExactly(10_007);
        assertThat(port(snapshot, 10_007).macs()).isEqualTo(1);
        assertThat(snapshot.addresses()).contains("00:00:5e:00:53:0c", SWITCH);
    }

    @Test
    void addressesLearntPerVlanCountOnce() {
        Snapshot snapshot = decode(TableFixture.aSwitch(SWITCH, 8)
                .with(QFDB + "2.1.0.0.94.0.83.10", 7)
                .with(QFDB + "2.30.0.0.94.0.83.10", 7));
        assertThat(snapshot.learnt()).containsEntry("00:00:5e:00:53:0a", Set.of(10_007));
        assertThat(port(snapshot, 10_007).macs()).isEqualTo(1);
    }

    /** RFC 5798: 00-00-5E-00-01-xx is shared by the routers of a group; a group address belongs to nobody. */
    @Test
    void addressesThatNoDeviceOwnsAloneAreLeftOut() {
        TableFixture tables = TableFixture.aSwitch(SWITCH, 2)
                .mac(IF + "6.10001", "00:00:5e:00:01:0a")
                .mac(IF + "6.10002", "01:00:5e:00:53:01");
        assertThat(decode(tables).addresses()).containsExactly(SWITCH);
    }

    @Test
    void aPortHasItsNameStateAndSpeed() {
        TableFixture tables =
                TableFixture.aSwitch(SWITCH, 2).with(IF + "8.10002", 2).with(IFX + "18.10002", "lobby");
        Snapshot snapshot = decode(tables);
        assertThat(port(snapshot, 10_001).title()).isEqualTo("port 1");
        assertThat(port(snapshot, 10_001).state()).isEqualTo(PortState.UP);
        assertThat(port(snapshot, 10_001).speedMbit()).hasValue(1_000);
        assertThat(port(snapshot, 10_001).bridgePort()).hasValue(1);
        assertThat(port(snapshot, 10_002).state()).isEqualTo(PortState.DOWN);
        assertThat(port(snapshot, 10_002).alias()).isEqualTo("lobby");
    }

    @Test
    void aBridgeWithoutInterfaceTablesStillHasPorts() {
        Snapshot snapshot = decode(new TableFixture().with(BRIDGE_PORT + "3", 3).learnt("00:00:5e:00:53:0a", 3));
        assertThat(port(snapshot, 3).macs()).isEqualTo(1);
        assertThat(port(snapshot, 3).state()).isEqualTo(PortState.UNKNOWN);
    }

    @Test
    void aShortReadingHasStatesOnly() {
        States states = States.of(TableFixture.aSwitch(SWITCH, 2)
                .power(1, 3, 4)
                .with(IF + "8.10002", 7)
                .states(AT));
        assertThat(states.links().get(10_002).state()).isEqualTo(PortState.LOWER_LAYER_DOWN);
        assertThat(states.power().get(0).words()).isEqualTo("power delivered, class 3");
    }
}
