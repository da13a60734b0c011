package org.roundsman.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.demo.model.Outlook;
import org.roundsman.fleet.DeviceKind;

/**
 * What the agents of switches and gateways tell about ports, power and neighbours, as net-snmp's snmptable reads it by
 * names, types and indexes of the MIBs (RFC 2863, RFC 4188, RFC 4363, RFC 3621, RFC 6933, IEEE 802.1AB-2005).
 */
class AgentTablesTest {

    private static final String FORWARDING = "1.3.6.1.2.1.17.4.3.1.";
    private static final String VLAN_FORWARDING = "1.3.6.1.2.1.17.7.1.2.2.1.";
    private static final String LLDP = "1.0.8802.1.1.2";

    private final SetClock clock = new SetClock("2026-11-25T10:02:30Z");
    private final DemoFleet fleet = DemoFleet.of(260, DemoFleet.USUAL_SEED, 26_166);
    private final Faults faults = new Faults(fleet, clock);
    private final Cabling cabling = faults.cabling();
    private AgentHost host;

    @BeforeEach
    void start() {
        host = AgentHost.start(fleet, faults, clock);
    }

    @AfterEach
    void stop() {
        host.close();
    }

    private void pass(Duration time) {
        clock.set(clock.instant().plus(time));
    }

    private boolean linked(DemoDevice device) {
        Outlook outlook = new Outlook();
        faults.look(device, clock.millis(), outlook);
        return outlook.linked;
    }

    /** A switch of that manner at whose site nothing is wrong for an hour and more. */
    private DemoDevice switchOf(SwitchManner manner) {
        return fleet.devices().stream()
                .filter(d -> d.kind() == DeviceKind.NETWORK_SWITCH && Cabling.manner(d) == manner)
                .filter(d -> fleet.siteOf(d).devices().stream().allMatch(this::quiet))
                .findFirst()
                .orElseThrow();
    }

    private boolean quiet(DemoDevice device) {
        long now = clock.millis();
        return !device.standing().contains(Fault.FLAPPING)
                && faults.silences(device, now - 3_600_000, now + 3_600_000).isEmpty();
    }

    private DemoDevice firstAccessPoint(DemoDevice above) {
        return cabling.down(above).stream()
                .map(link -> cabling.across(link, above))
                .filter(DemoDevice::isAccessPoint)
                .filter(Cabling::sendsLldp)
                .findFirst()
                .orElseThrow();
    }

    private int portOf(DemoDevice accessPoint) {
        return cabling.up(accessPoint).orElseThrow().abovePort();
    }

    @Test
    void everyMannerShowsTheSameTreeByGetNextAndByGetBulk() {
        for (SwitchManner manner : SwitchManner.values()) {
            sameTree(switchOf(manner));
        }
        sameTree(fleet.siteOf(switchOf(SwitchManner.PLAIN)).devices().get(0));
    }

    private static void sameTree(DemoDevice device) {
        Map<String, String> next = NetSnmp.ask("snmpwalk", device, ".1").values();
        assertThat(next.size()).isGreaterThan(150);
        Map<String, String> bulk = NetSnmp.ask("snmpbulkwalk", device, ".1").values();
        assertThat(List.copyOf(bulk.entrySet())).isEqualTo(List.copyOf(next.entrySet()));
    }

    @Test
    void portsHaveNamesSpeedsAndCountersAndIndexesThatAreNotTheirNumbers() {
        DemoDevice device = switchOf(SwitchManner.PLAIN);
        Map<String, Map<String, String>> bridge = NetSnmp.table(device, "BRIDGE-MIB::dot1dBasePortTable");
        Map<String, Map<String, String>> plain = NetSnmp.table(device, "IF-MIB::ifTable");
        Map<String, Map<String, String>> wide = NetSnmp.table(device, "IF-MIB::ifXTable");
        assertThat(bridge).hasSize(25);
        assertThat(plain.keySet()).isEqualTo(wide.keySet()).hasSize(25);
        bridge.forEach((number, row) -> {
            String index = row.get("dot1dBasePortIfIndex");
            assertThat(index).isEqualTo(Integer.toString(10_000 + Integer.parseInt(number)));
            assertThat(plain.get(index).get("ifDescr"))
                    .isEqualTo(wide.get(index).get("ifName"));
        });
        DemoDevice accessPoint = firstAccessPoint(device);
        String index = Integer.toString(10_000 + portOf(accessPoint));
        assertThat(plain.get(index)).containsEntry("ifOperStatus", "up").containsEntry("ifSpeed", "1000000000");
        assertThat(wide.get(index))
                .containsEntry("ifHighSpeed", "1000")
                .containsEntry("ifAlias", "to " + accessPoint.name());
        assertThat(plain.get("10023")).containsEntry("ifAdminStatus", "down").containsEntry("ifOperStatus", "down");
        pass(Duration.ofMinutes(1));
        Map<String, Map<String, String>> later = NetSnmp.table(device, "IF-MIB::ifXTable");
        for (String column : List.of("ifHCInOctets", "ifHCOutOctets", "ifHCInUcastPkts")) {
            assertThat(Long.parseLong(later.get(index).get(column)))
                    .isGreaterThan(Long.parseLong(wide.get(index).get(column)));
            assertThat(later.get("10023").get(column)).isEqualTo("0");
        }
    }

    @Test
    void everyNeighbourThatSpeaksStandsBehindItsPort() {
        for (SwitchManner manner : List.of(SwitchManner.PLAIN, SwitchManner.WITH_VLANS)) {
            DemoDevice device = switchOf(manner);
            Map<String, Map<String, String>> heard = NetSnmp.table(device, "LLDP-MIB::lldpRemTable");
            List<DemoLink> links = new java.util.ArrayList<>(cabling.down(device));
            cabling.up(device).ifPresent(links::add);
            int speaking = 0;
            for (DemoLink link : links) {
                DemoDevice other = cabling.across(link, device);
                if (Cabling.sendsLldp(other)) {
                    speaking++;
                    assertThat(rowsAt(heard, link.portOf(device)))
                            .singleElement()
                            .satisfies(row -> isAbout(row, other));
                }
            }
            assertThat(heard).hasSize(speaking);
        }
    }

    /** The second part of the index is the local port. */
    private static List<Map<String, String>> rowsAt(Map<String, Map<String, String>> heard, int port) {
        return heard.entrySet().stream()
                .filter(row -> row.getKey().split("\\.")[1].equals(Integer.toString(port)))
                .map(Map.Entry::getValue)
                .toList();
    }

    private static void isAbout(Map<String, String> row, DemoDevice other) {
        assertThat(row.get("lldpRemSysName")).isEqualTo(other.fullName());
        String mac = String.format("%012X", other.mac());
        String chassis = row.get("lldpRemChassisId").replace(" ", "");
        String port = row.get("lldpRemPortId");
        String capabilities = row.get("lldpRemSysCapEnabled");
        switch (other.model()) {
            case TR_22 -> {
                assertThat(row).containsEntry("lldpRemChassisIdSubtype", "macAddress");
                assertThat(chassis).isEqualTo(mac);
                assertThat(row).containsEntry("lldpRemPortIdSubtype", "macAddress");
                assertThat(port.replace(" ", "")).isEqualTo(mac);
                // bits 2 and 3 of BITS: bridge, wlanAccessPoint
                assertThat(capabilities).isEqualTo("30 ");
            }
            case TR_33 -> assertThat(port).isEqualTo("eth0");
            case TR_50X -> assertThat(row).containsEntry("lldpRemChassisIdSubtype", "networkAddress");
            case TS_24 -> {
                assertThat(chassis).isEqualTo(mac);
                assertThat(row).containsEntry("lldpRemPortIdSubtype", "interfaceName");
                assertThat(capabilities).isEqualTo("20 ");
            }
            default -> {
                assertThat(row).containsEntry("lldpRemChassisIdSubtype", "local");
                assertThat(row).containsEntry("lldpRemPortIdSubtype", "interfaceAlias");
                // bits 2 and 4: bridge, router
                assertThat(capabilities).isEqualTo("28 ");
            }
        }
    }

    @Test
    void managementAddressesAreThoseAtWhichTheAgentsAnswer() {
        DemoDevice device = switchOf(SwitchManner.PLAIN);
        DemoDevice accessPoint = firstAccessPoint(device);
        String column = LLDP + ".1.4.2.1.3";
        Map<String, String> rows = NetSnmp.ask("snmpbulkwalk", device, column).values();
        // family ipV4 (1), then the length, since the address has none that is fixed (RFC 2578, 7.7)
        assertThat(rows.keySet())
                .anyMatch(name -> name.matches(".*\\." + portOf(accessPoint) + "\\.\\d+\\.1\\.4\\."
                        + accessPoint.host().replace(".", "\\.")));
        assertThat(NetSnmp.ask("snmpbulkwalk", device, LLDP + ".1.3.8").values())
                .containsKey(LLDP + ".1.3.8.1.5.1.4." + device.host());
    }

    @Test
    void anAccessPointHearsItsSwitchWhereThatSpeaks() {
        DemoDevice device = switchOf(SwitchManner.PLAIN);
        DemoDevice accessPoint = firstAccessPoint(device);
        Map<String, Map<String, String>> heard = NetSnmp.table(accessPoint, "LLDP-MIB::lldpRemTable");
        assertThat(heard.values()).singleElement().satisfies(row -> {
            isAbout(row, device);
            assertThat(row.get("lldpRemPortId")).isEqualTo("port " + portOf(accessPoint));
        });
        assertThat(NetSnmp.table(accessPoint, "LLDP-MIB::lldpLocPortTable")).hasSize(1);
        DemoDevice alone = firstAccessPoint(switchOf(SwitchManner.WITHOUT_LLDP));
        assertThat(NetSnmp.ask("snmpbulkwalk", alone, LLDP + ".1.4").output()).contains("No Such Object");
    }

    @Test
    void aSwitchWithoutLldpStillShowsWhereAddressesAre() {
        DemoDevice device = switchOf(SwitchManner.WITHOUT_LLDP);
        assertThat(NetSnmp.ask("snmpbulkwalk", device, LLDP).output()).contains("No Such Object");
        Map<String, Map<String, String>> learnt = NetSnmp.table(device, "BRIDGE-MIB::dot1dTpFdbTable");
        NetSnmp.Said said = NetSnmp.ask("snmpbulkwalk", device, FORWARDING.substring(0, FORWARDING.length() - 1));
        assertThat(learnt).hasSize(said.values().size() / 3);
        for (DemoLink link : cabling.down(device)) {
            DemoDevice other = cabling.across(link, device);
            assertThat(said.number(FORWARDING + "2." + dotted(other.mac()))).isEqualTo(link.abovePort());
            assertThat(said.value(FORWARDING + "1." + dotted(other.mac())).replace(" ", ""))
                    .isEqualTo(String.format("%012X", other.mac()));
        }
        DemoDevice gateway = fleet.siteOf(device).devices().get(0);
        assertThat(said.number(FORWARDING + "2." + dotted(gateway.mac()))).isEqualTo(25);
        // self (4) is the switch's own address, no neighbour
        assertThat(said.number(FORWARDING + "3." + dotted(device.mac()))).isEqualTo(4);
        assertThat(said.number(FORWARDING + "2.1.128.194.0.0.14")).isZero();
        assertThat(learnt.values())
                .filteredOn(row -> row.get("dot1dTpFdbStatus").equals("learned"))
                .hasSizeGreaterThan(2 * cabling.down(device).size());
    }

    /** MACs of other switches and what hangs on them come in by the ports between switches. */
    @Test
    void chainedSwitchesWithVlansEachSeeTheOtherSideBehindOnePort() {
        DemoSite site = fleet.sites().stream()
                .filter(s -> Cabling.manner(s.devices().get(0)) == SwitchManner.WITH_VLANS)
                .filter(s -> s.devices().get(2).kind() == DeviceKind.NETWORK_SWITCH)
                .findFirst()
                .orElseThrow();
        DemoDevice first = site.devices().get(1);
        DemoDevice second = site.devices().get(2);
        NetSnmp.Said near = NetSnmp.ask("snmpbulkwalk", first, VLAN_FORWARDING + 2);
        NetSnmp.Said far = NetSnmp.ask("snmpbulkwalk", second, VLAN_FORWARDING + 2);
        assertThat(near.number(VLAN_FORWARDING + "2.1." + dotted(second.mac()))).isEqualTo(24);
        assertThat(far.number(VLAN_FORWARDING + "2.1." + dotted(first.mac()))).isEqualTo(25);
        for (DemoLink link : cabling.down(second)) {
            String name = VLAN_FORWARDING + "2.1."
                    + dotted(cabling.across(link, second).mac());
            if (linked(cabling.across(link, second))) {
                assertThat(near.number(name)).isEqualTo(24);
                assertThat(far.number(name)).isEqualTo(link.abovePort());
            }
        }
        assertThat(far.values().keySet()).anyMatch(name -> name.startsWith(VLAN_FORWARDING + "2.20.14."));
        assertThat(NetSnmp.ask("snmpbulkwalk", first, FORWARDING + 2).output()).contains("No Such Object");
        Map<String, Map<String, String>> counts = NetSnmp.table(first, "Q-BRIDGE-MIB::dot1qFdbTable");
        assertThat(counts.values().stream()
                        .mapToInt(row -> Integer.parseInt(row.get("dot1qFdbDynamicCount")))
                        .sum())
                .isEqualTo(near.values().size());
    }

    private static String dotted(long mac) {
        StringBuilder dotted = new StringBuilder();
        for (int shift = 40; shift >= 0; shift -= 8) {
            dotted.append(shift < 40 ? "." : "").append(mac >> shift & 0xFF);
        }
        return dotted.toString();
    }

    @Test
    void portsThatFeedAccessPointsSayTheirClass() {
        DemoDevice device = switchOf(SwitchManner.PLAIN);
        Map<String, Map<String, String>> power = NetSnmp.table(device, "POWER-ETHERNET-MIB::pethPsePortTable");
        assertThat(power).hasSize(24);
        for (DemoLink link : cabling.down(device)) {
            DemoDevice other = cabling.across(link, device);
            Map<String, String> row = power.get("1." + link.abovePort());
            boolean fed = link.feed() == PowerFeed.PORT;
            assertThat(row).containsEntry("pethPsePortDetectionStatus", fed ? "deliveringPower" : "searching");
            if (fed) {
                assertThat(row)
                        .containsEntry(
                                "pethPsePortPowerClassifications",
                                "class" + other.model().poeClass());
            }
        }
        assertThat(power.get("1.23"))
                .containsEntry("pethPsePortAdminEnable", "false")
                .containsEntry("pethPsePortDetectionStatus", "disabled");
        Map<String, String> main =
                NetSnmp.table(device, "POWER-ETHERNET-MIB::pethMainPseTable").get("1");
        assertThat(main).containsEntry("pethMainPseOperStatus", "on").containsEntry("pethMainPsePower", "370");
        assertThat(Integer.parseInt(main.get("pethMainPseConsumptionPower"))).isBetween(5, 370);
        assertThat(NetSnmp.table(device, "ENTITY-MIB::entPhysicalTable").get("1"))
                .containsEntry("entPhysicalSerialNum", device.serial())
                .containsEntry("entPhysicalContainedIn", "0");
    }

    /** IEEE 802.1AB: a neighbour is forgotten when its last frame has run out, by default after 4 times 30 s. */
    @Test
    void aDeadPortShowsInEveryTable() {
        DemoDevice device = switchOf(SwitchManner.PLAIN);
        DemoDevice accessPoint = firstAccessPoint(device);
        int port = portOf(accessPoint);
        String before = indexOf(device, port);
        faults.switchOn(Fault.PORT_DEAD, accessPoint);
        pass(Duration.ofSeconds(90));
        Map<String, String> row = NetSnmp.table(device, "IF-MIB::ifTable").get(Integer.toString(10_000 + port));
        assertThat(row).containsEntry("ifOperStatus", "down").containsEntry("ifAdminStatus", "up");
        assertThat(NetSnmp.table(device, "POWER-ETHERNET-MIB::pethPsePortTable")
                        .get("1." + port)
                        .get("pethPsePortDetectionStatus"))
                .isIn("fault", "searching");
        assertThat(NetSnmp.table(device, "BRIDGE-MIB::dot1dTpFdbTable").values())
                .noneMatch(learnt -> learnt.get("dot1dTpFdbPort").equals(Integer.toString(port)));
        assertThat(indexOf(device, port)).isEqualTo(before);
        pass(Duration.ofSeconds(31));
        assertThat(indexOf(device, port)).isNull();
        Map<String, String> later = NetSnmp.table(device, "IF-MIB::ifXTable").get(Integer.toString(10_000 + port));
        pass(Duration.ofMinutes(5));
        assertThat(NetSnmp.table(device, "IF-MIB::ifXTable").get(Integer.toString(10_000 + port)))
                .isEqualTo(later);
        faults.switchOff(Fault.PORT_DEAD, accessPoint);
        pass(Duration.ofMinutes(2));
        row = NetSnmp.table(device, "IF-MIB::ifTable").get(Integer.toString(10_000 + port));
        assertThat(row).containsEntry("ifOperStatus", "up");
        assertThat(Long.parseLong(indexOf(device, port).split("\\.")[0]))
                .isGreaterThan(Long.parseLong(before.split("\\.")[0]));
    }

    private static String indexOf(DemoDevice device, int port) {
        return NetSnmp.table(device, "LLDP-MIB::lldpRemTable").keySet().stream()
                .filter(index -> index.split("\\.")[1].equals(Integer.toString(port)))
                .findFirst()
                .orElse(null);
    }

    @Test
    void aSlowPortIsSlowAtBothEnds() {
        DemoDevice device = switchOf(SwitchManner.PLAIN);
        DemoDevice accessPoint = firstAccessPoint(device);
        faults.switchOn(Fault.PORT_SLOW, accessPoint);
        assertThat(NetSnmp.table(device, "IF-MIB::ifXTable").get(Integer.toString(10_000 + portOf(accessPoint))))
                .containsEntry("ifHighSpeed", "100");
    }
}
