package org.roundsman.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.demo.model.Outlook;

/**
 * What tells one outage from another at the devices around it, as net-snmp's tools read it by names and types of the MIBs
 * (RFC 2863, RFC 3621, IEEE 802.1AB-2005).
 */
class OutageFaultsTest {

    private static final String UPTIME = "1.3.6.1.2.1.1.3.0";
    private static final String BOOTS = "1.3.6.1.6.3.10.2.1.2.0";

    private final SetClock clock = new SetClock("2026-11-25T10:02:30Z");
    private final DemoFleet fleet = DemoFleet.of(250, 11, 26_172);
    private final Faults faults = Faults.byHandOnly(fleet, clock);
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

    private static boolean answers(DemoDevice device) {
        return NetSnmp.answers(device, UPTIME);
    }

    private static long uptime(DemoDevice device) {
        return NetSnmp.ask("snmpget", device, UPTIME).number(UPTIME);
    }

    private DemoDevice named(String name) {
        DemoDevice device = fleet.devices().stream()
                .filter(d -> d.name().equals(name))
                .findFirst()
                .orElseThrow();
        Outlook outlook = new Outlook();
        faults.look(device, clock.millis(), outlook);
        assertThat(clock.millis() - outlook.restart).as("up for").isGreaterThan(3_600_000);
        return device;
    }

    private DemoDevice above(DemoDevice device) {
        return cabling.across(cabling.up(device).orElseThrow(), device);
    }

    private int portOf(DemoDevice device) {
        return cabling.up(device).orElseThrow().abovePort();
    }

    private String operStatus(DemoDevice device) {
        return NetSnmp.table(above(device), "IF-MIB::ifTable")
                .get(Integer.toString(
                        (above(device).kind() == org.roundsman.fleet.DeviceKind.GATEWAY ? 0 : 10_000) + portOf(device)))
                .get("ifOperStatus");
    }

    private Map<String, String> power(DemoDevice device) {
        return NetSnmp.table(above(device), "POWER-ETHERNET-MIB::pethPsePortTable")
                .get("1." + portOf(device));
    }

    private boolean hears(DemoDevice device) {
        return hears(above(device), device);
    }

    private static boolean hears(DemoDevice listener, DemoDevice other) {
        // lldpRemSysName
        return NetSnmp.ask("snmpbulkwalk", listener, "1.0.8802.1.1.2.1.4.1.1.9").values().values().stream()
                .anyMatch(name -> name.contains("\"" + other.fullName() + "\""));
    }

    @Test
    void aGatewayWhoseManagementIsLostPassesOnWhatIsBehindIt() {
        DemoDevice gateway = named("garden-gateway");
        faults.switchOn(Fault.AGENT_SILENT, gateway);
        assertThat(answers(gateway)).isFalse();
        fleet.siteOf(gateway).devices().stream().skip(1).limit(4).forEach(device -> assertThat(answers(device))
                .isTrue());
        pass(Duration.ofMinutes(3));
        assertThat(hears(named("garden-switch-1"), gateway)).isTrue();
        long before = uptime(named("garden-switch-1"));
        faults.switchOff(Fault.AGENT_SILENT, gateway);
        assertThat(uptime(gateway)).isGreaterThan(3 * 6000);
        assertThat(uptime(named("garden-switch-1"))).isEqualTo(before);
        assertThat(operStatus(named("garden-switch-1"))).isEqualTo("up");
    }

    @Test
    void aSwitchThatHangsSilencesWhatIsBehindItAndKeepsItsLink() {
        DemoDevice hung = named("garden-switch-1");
        DemoDevice accessPoint = named("garden-ap-03");
        DemoDevice next = named("garden-switch-2");
        long before = uptime(accessPoint);
        faults.switchOn(Fault.HUNG, hung);
        assertThat(List.of(hung, accessPoint, next, named("garden-ap-18"))).noneMatch(OutageFaultsTest::answers);
        assertThat(answers(above(hung))).isTrue();
        assertThat(operStatus(hung)).isEqualTo("up");
        // its last frame has run out after four times 30 s (IEEE 802.1AB, defaults)
        pass(Duration.ofMinutes(3));
        assertThat(hears(hung)).isFalse();
        faults.switchOff(Fault.HUNG, hung);
        pass(Duration.ofMinutes(2));
        assertThat(hears(hung)).isTrue();
        assertThat(uptime(accessPoint)).isEqualTo(before + 5 * 6000);
    }

    @Test
    void aSwitchWithoutPowerLosesItsLinkAndComesBackWithAllItFedRestarted() {
        DemoDevice dark = named("garden-switch-2");
        DemoDevice accessPoint = named("garden-ap-18");
        faults.switchOn(Fault.PORT_DEAD, dark);
        assertThat(List.of(dark, accessPoint)).noneMatch(OutageFaultsTest::answers);
        assertThat(operStatus(dark)).isEqualTo("down");
        assertThat(answers(named("garden-ap-03"))).isTrue();
        pass(Duration.ofMinutes(4));
        faults.switchOff(Fault.PORT_DEAD, dark);
        pass(Duration.ofMinutes(3));
        assertThat(uptime(dark)).isEqualTo(3 * 6000);
        assertThat(uptime(accessPoint)).isEqualTo(3 * 6000);
        assertThat(operStatus(dark)).isEqualTo("up");
    }

    @Test
    void aPortWhosePowerIsSwitchedOffSaysSo() {
        DemoDevice accessPoint = named("garden-ap-03");
        assertThat(power(accessPoint))
                .containsEntry("pethPsePortAdminEnable", "true")
                .containsEntry("pethPsePortDetectionStatus", "deliveringPower");
        faults.switchOn(Fault.POWER_OFF, accessPoint);
        assertThat(answers(accessPoint)).isFalse();
        assertThat(power(accessPoint))
                .containsEntry("pethPsePortAdminEnable", "false")
                .containsEntry("pethPsePortDetectionStatus", "disabled");
        assertThat(operStatus(accessPoint)).isEqualTo("down");
        pass(Duration.ofMinutes(4));
        assertThat(hears(accessPoint)).isFalse();
        faults.switchOff(Fault.POWER_OFF, accessPoint);
        pass(Duration.ofMinutes(2));
        assertThat(uptime(accessPoint)).isEqualTo(2 * 6000);
        assertThat(power(accessPoint)).containsEntry("pethPsePortDetectionStatus", "deliveringPower");
    }

    @Test
    void whatNoPortFeedsKeepsItsPowerWhenThatIsSwitchedOff() {
        DemoDevice hung = named("garden-switch-2");
        faults.switchOn(Fault.POWER_OFF, hung);
        assertThat(answers(hung)).isTrue();
        assertThat(faults.handSwitched(hung)).isEmpty();
    }

    @Test
    void aBrokenCableTakesTheLinkAndLeavesThePower() {
        DemoDevice accessPoint = named("garden-ap-03");
        long before = uptime(accessPoint);
        faults.switchOn(Fault.LINK_DOWN, accessPoint);
        assertThat(answers(accessPoint)).isFalse();
        assertThat(operStatus(accessPoint)).isEqualTo("down");
        assertThat(power(accessPoint)).containsEntry("pethPsePortDetectionStatus", "deliveringPower");
        pass(Duration.ofMinutes(4));
        assertThat(hears(accessPoint)).isFalse();
        faults.switchOff(Fault.LINK_DOWN, accessPoint);
        pass(Duration.ofMinutes(2));
        assertThat(uptime(accessPoint)).isEqualTo(before + 6 * 6000);
        assertThat(operStatus(accessPoint)).isEqualTo("up");
        assertThat(hears(accessPoint)).isTrue();
    }

    @Test
    void anAccessPointThatHangsKeepsLinkAndPower() {
        DemoDevice accessPoint = named("garden-ap-03");
        faults.switchOn(Fault.HUNG, accessPoint);
        pass(Duration.ofMinutes(4));
        assertThat(answers(accessPoint)).isFalse();
        assertThat(operStatus(accessPoint)).isEqualTo("up");
        assertThat(power(accessPoint)).containsEntry("pethPsePortDetectionStatus", "deliveringPower");
        assertThat(hears(accessPoint)).isFalse();
    }

    @Test
    void oneRestartIsTwoMinutesOfSilenceAndANewCount() {
        DemoDevice accessPoint = named("garden-ap-03");
        long boots = NetSnmp.ask("snmpget", accessPoint, BOOTS).number(BOOTS);
        faults.switchOn(Fault.RESTARTED, accessPoint);
        assertThat(answers(accessPoint)).isFalse();
        pass(Duration.ofMinutes(2));
        NetSnmp.Said said = NetSnmp.ask("snmpget", accessPoint, UPTIME, BOOTS);
        assertThat(said.number(UPTIME)).isEqualTo(2 * 6000);
        assertThat(said.number(BOOTS)).isGreaterThan(boots);
        faults.switchOff(Fault.RESTARTED, accessPoint);
        pass(Duration.ofMinutes(1));
        assertThat(uptime(accessPoint)).isEqualTo(3 * 6000);
    }
}
