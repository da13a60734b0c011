package org.roundsman.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.demo.model.Outlook;

/** Each fault, switched by hand, as net-snmp's tools meet it. */
class FaultsTest {

    private static final String UPTIME = "1.3.6.1.2.1.1.3.0";
    private static final String BOOTS = "1.3.6.1.6.3.10.2.1.2.0";
    private static final String HIGH_SPEED = "1.3.6.1.2.1.31.1.1.1.15.1";
    private static final String FIRMWARE = "1.3.6.1.4.1.32473.2.1.3.0";
    private static final String DEVICE_CLOCK = "1.3.6.1.4.1.32473.2.2.3.0";
    private static final String RADIO = "1.3.6.1.4.1.32473.2.3.1.1.";

    private final SetClock clock = new SetClock("2026-11-25T10:02:30Z");
    private final DemoFleet fleet = DemoFleet.of(250, 11, 26_162);
    private final Faults faults = new Faults(fleet, clock);
    private AgentHost host;

    @BeforeEach
    void start() {
        host = AgentHost.start(fleet, faults, clock);
    }

    @AfterEach
    void stop() {
        host.close();
    }

    private DemoDevice well(boolean versionThree) {
        return fleet.devices().stream()
                .filter(d -> d.model() == DemoModel.TR_22 && d.standing().isEmpty())
                .filter(d -> d.accepts() instanceof DemoCredential.User == versionThree)
                .filter(d -> faults.of(d, clock.millis()).isEmpty() && upFor(d) > 3_600_000)
                .findFirst()
                .orElseThrow();
    }

    private long upFor(DemoDevice device) {
        Outlook outlook = new Outlook();
        faults.look(device, clock.millis(), outlook);
        return clock.millis() - outlook.restart;
    }

    private static DemoDevice standing(DemoFleet fleet, Fault fault) {
        return fleet.devices().stream()
                .filter(d -> d.standing().contains(fault))
                .findFirst()
                .orElseThrow();
    }

    private void pass(Duration time) {
        clock.set(clock.instant().plus(time));
    }

    private static boolean answers(DemoDevice device) {
        return NetSnmp.answers(device, UPTIME);
    }

    @Test
    void aSiteWithoutItsLineIsDarkAndComesBackWithoutARestart() {
        DemoDevice device = well(false);
        DemoSite site = fleet.siteOf(device);
        long before = NetSnmp.ask("snmpget", device, UPTIME).number(UPTIME);
        faults.switchOn(Fault.UPLINK_LOST, site);
        assertThat(answers(device)).isFalse();
        assertThat(answers(site.devices().get(0))).isFalse();
        pass(Duration.ofMinutes(5));
        faults.switchOff(Fault.UPLINK_LOST, site);
        assertThat(NetSnmp.ask("snmpget", device, UPTIME).number(UPTIME)).isEqualTo(before + 30_000);
    }

    @Test
    void anAccessPointWithoutPowerIsSilentAndRestartsWhenItIsBack() {
        DemoDevice device = well(false);
        long boots = NetSnmp.ask("snmpget", device, BOOTS).number(BOOTS);
        faults.switchOn(Fault.PORT_DEAD, device);
        assertThat(answers(device)).isFalse();
        assertThat(answers(fleet.siteOf(device).devices().get(0))).isTrue();
        pass(Duration.ofMinutes(5));
        faults.switchOff(Fault.PORT_DEAD, device);
        pass(Duration.ofSeconds(119));
        assertThat(answers(device)).isFalse();
        // it answers as soon as it says so by a notification
        pass(Duration.ofSeconds(1));
        NetSnmp.Said said = NetSnmp.ask("snmpget", device, UPTIME, BOOTS);
        assertThat(said.number(UPTIME)).isEqualTo(2 * 6000);
        assertThat(said.number(BOOTS)).isGreaterThan(boots);
    }

    @Test
    void aSwitchWithoutPowerTakesAlongWhatItFeeds() {
        DemoDevice device = well(false);
        Cabling cabling = faults.cabling();
        DemoDevice above = cabling.across(cabling.up(device).orElseThrow(), device);
        long boots = NetSnmp.ask("snmpget", device, BOOTS).number(BOOTS);
        faults.switchOn(Fault.PORT_DEAD, above);
        assertThat(answers(device)).isFalse();
        assertThat(answers(above)).isFalse();
        DemoDevice gateway = fleet.siteOf(device).devices().get(0);
        // lan 1 of the gateway is where the first switch hangs
        String lan = "1.3.6.1.2.1.2.2.1.8.1";
        assertThat(NetSnmp.ask("snmpget", gateway, lan).number(lan)).isEqualTo(2);
        assertThat(faults.of(device, clock.millis())).isEmpty();
        pass(Duration.ofMinutes(5));
        faults.switchOff(Fault.PORT_DEAD, above);
        pass(Duration.ofMinutes(3));
        NetSnmp.Said said = NetSnmp.ask("snmpget", device, UPTIME, BOOTS);
        assertThat(said.number(UPTIME)).isEqualTo(3 * 6000);
        assertThat(said.number(BOOTS)).isGreaterThan(boots);
        assertThat(answers(above)).isTrue();
    }

    @Test
    void anUpdateAndANetworkChangeFactsAndGoAgain() {
        DemoDevice device = well(false);
        String ssid = "1.3.6.1.4.1.32473.2.4.1.1.1.1.3";
        assertThat(NetSnmp.ask("snmpget", device, ssid).values().get(ssid)).startsWith("No Such Instance");
        faults.switchOn(Fault.NETWORK_ADDED, device);
        assertThat(NetSnmp.ask("snmpget", device, ssid).value(ssid)).isEqualTo("Open Day");
        faults.switchOff(Fault.NETWORK_ADDED, device);
        long boots = NetSnmp.ask("snmpget", device, BOOTS).number(BOOTS);
        faults.switchOn(Fault.FIRMWARE_UPDATED, device);
        pass(Duration.ofMinutes(3));
        NetSnmp.Said said = NetSnmp.ask("snmpget", device, FIRMWARE, BOOTS, UPTIME);
        assertThat(said.value(FIRMWARE)).isEqualTo("6.5.0");
        assertThat(said.number(BOOTS)).isGreaterThan(boots);
        assertThat(said.number(UPTIME)).isEqualTo(3 * 6000);
        faults.switchOff(Fault.FIRMWARE_UPDATED, device);
        pass(Duration.ofMinutes(3));
        assertThat(NetSnmp.ask("snmpget", device, FIRMWARE).value(FIRMWARE)).isEqualTo("6.4.2");
        assertThat(NetSnmp.ask("snmpget", device, ssid).values().get(ssid)).startsWith("No Such Instance");
    }

    @Test
    void aSwappedUnitAnswersWithItsOwnSerialNumberAndHasJustStarted() {
        String serial = "1.3.6.1.4.1.32473.2.1.1.0";
        DemoDevice device = well(false);
        assertThat(NetSnmp.ask("snmpget", device, serial).value(serial)).isEqualTo(device.serial());
        faults.switchOn(Fault.UNIT_SWAPPED, device);
        pass(Duration.ofMinutes(3));
        NetSnmp.Said said = NetSnmp.ask("snmpget", device, serial, UPTIME);
        assertThat(said.value(serial)).isEqualTo(device.swappedSerial());
        assertThat(said.number(UPTIME)).isEqualTo(3 * 6000);
        faults.switchOff(Fault.UNIT_SWAPPED, device);
        pass(Duration.ofMinutes(3));
        assertThat(NetSnmp.ask("snmpget", device, serial).value(serial)).isEqualTo(device.serial());
    }

    @Test
    void aFlappingAccessPointComesAndGoes() {
        DemoDevice device = well(false);
        faults.switchOn(Fault.FLAPPING, device);
        StringBuilder seen = new StringBuilder();
        for (int minute = 0; minute < 30; minute += 2) {
            seen.append(answers(device) ? 'a' : '.');
            pass(Duration.ofMinutes(2));
        }
        assertThat(seen.toString()).matches(".*a+\\.+a+\\.+.*");
    }

    @Test
    void firmwarePortRadioAndClockShowTheirFaults() {
        DemoDevice device = well(false);
        faults.switchOn(Fault.FIRMWARE_STALE, device);
        faults.switchOn(Fault.PORT_SLOW, device);
        faults.switchOn(Fault.RADIO_OFF, device);
        faults.switchOn(Fault.CLOCK_1970, device);
        NetSnmp.Said said = NetSnmp.ask(
                "snmpget", device, FIRMWARE, HIGH_SPEED, DEVICE_CLOCK, RADIO + "12.1", RADIO + "8.1", RADIO + "9.1");
        assertThat(said.value(FIRMWARE)).isEqualTo("5.9.13");
        assertThat(said.number(HIGH_SPEED)).isEqualTo(100);
        assertThat(said.value(DEVICE_CLOCK)).startsWith("07 B2");
        assertThat(said.number(RADIO + "12.1")).isEqualTo(2);
        assertThat(said.number(RADIO + "8.1")).isZero();
        assertThat(said.values().get(RADIO + "9.1")).startsWith("No Such Instance");
        assertThat(NetSnmp.ask("snmpwalk", device, RADIO.substring(0, RADIO.length() - 1))
                        .values())
                .doesNotContainKey(RADIO + "9.1")
                .containsKey(RADIO + "9.2");
    }

    @Test
    void aSaturatedRoomShowsOnOneRadio() {
        DemoDevice device = well(false);
        assertThat(NetSnmp.ask("snmpget", device, RADIO + "9.2").number(RADIO + "9.2"))
                .isLessThan(217);
        faults.switchOn(Fault.ROOM_SATURATED, device);
        assertThat(NetSnmp.ask("snmpget", device, RADIO + "9.2").number(RADIO + "9.2"))
                .isGreaterThan(217);
        faults.switchOff(Fault.ROOM_SATURATED, device);
        assertThat(NetSnmp.ask("snmpget", device, RADIO + "9.2").number(RADIO + "9.2"))
                .isLessThan(217);
    }

    @Test
    void aWrongCredentialIsSilenceInVersionTwoAndARefusalInVersionThree() {
        DemoDevice plain = well(false);
        DemoDevice secure = well(true);
        faults.switchOn(Fault.CREDENTIAL_WRONG, plain);
        faults.switchOn(Fault.CREDENTIAL_WRONG, secure);
        assertThat(answers(plain)).isFalse();
        assertThat(NetSnmp.ask("snmpget", secure, UPTIME).output()).contains("Authentication failure");
    }

    @Test
    void whatTheServiceIsToldOfTheMisconfiguredDeviceIsRefused() {
        DemoDevice device = standing(fleet, Fault.CREDENTIAL_WRONG);
        assertThat(NetSnmp.ask("snmpget", device, device.credential(), UPTIME).output())
                .contains("Authentication failure");
        assertThat(answers(device)).isTrue();
    }

    @Test
    void restartedAgentsGoOnWhereTheyWere() {
        DemoDevice device = well(false);
        var before = NetSnmp.ask("snmpbulkwalk", device, ".1").values();
        host.close();
        assertThat(answers(device)).isFalse();
        host = AgentHost.start(DemoFleet.of(250, 11, 26_162), new Faults(fleet, clock), clock);
        assertThat(NetSnmp.ask("snmpbulkwalk", device, ".1").values()).isEqualTo(before);
    }

    @Test
    void aFaultSwitchedTwiceEndsAtOnce() {
        DemoDevice device = well(false);
        faults.switchOn(Fault.PORT_SLOW, device);
        faults.switchOn(Fault.PORT_SLOW, device);
        pass(Duration.ofSeconds(1));
        faults.switchOff(Fault.PORT_SLOW, device);
        assertThat(faults.of(device, clock.millis())).isEmpty();
        assertThat(faults.of(device, Instant.parse("2026-11-25T10:02:30Z").toEpochMilli()))
                .containsExactly(Fault.PORT_SLOW);
    }
}
