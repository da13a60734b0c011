package org.roundsman.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Faults that leave a device answering, as net-snmp's tools read what it then says. Places of objects by the contract. */
class QualityFaultsTest {

    private static final String OWN = "1.3.6.1.4.1.32473.2.";
    private static final String CPU = OWN + "2.1.0";
    private static final String MEMORY = OWN + "2.2.0";
    private static final String CLIENTS = OWN + "3.1.1.8.2";
    private static final String UTILISATION = OWN + "3.1.1.9.2";
    private static final String FRAMES = OWN + "3.1.1.10.2";
    private static final String RETRIED = OWN + "3.1.1.11.2";
    private static final String SSID = OWN + "4.1.1.1.1.";
    private static final String ERRORS = "1.3.6.1.2.1.2.2.1.14.1";

    private final SetClock clock = new SetClock("2026-11-25T10:02:30Z");
    private final DemoFleet fleet = DemoFleet.of(250, 11, 26_173);
    private final Faults faults = Faults.byHandOnly(fleet, clock);
    private final DemoDevice device = fleet.devices().stream()
            .filter(d -> d.model() == DemoModel.TR_22 && d.standing().isEmpty())
            .filter(d -> d.accepts() instanceof DemoCredential.Community)
            .findFirst()
            .orElseThrow();
    private AgentHost host;

    @BeforeEach
    void start() {
        host = AgentHost.start(fleet, faults, clock);
    }

    @AfterEach
    void stop() {
        host.close();
    }

    private long number(String name) {
        return NetSnmp.ask("snmpget", device, name).number(name);
    }

    private String text(String name) {
        return NetSnmp.ask("snmpget", device, name).values().get(name);
    }

    /** BSS Load gives the share in 255ths (IEEE 802.11). */
    @ParameterizedTest
    @CsvSource({"CHANNEL_HALF, 50, 60", "CHANNEL_BUSY, 70, 80", "ROOM_SATURATED, 85, 100"})
    void aBusyChannelIsAsBusyAsItsFaultSays(Fault fault, double from, double to) {
        assertThat(number(UTILISATION) / 2.55).isLessThan(50);
        faults.switchOn(fault, device);
        for (int minute = 0; minute < 60; minute += 10) {
            assertThat(number(UTILISATION) / 2.55).isBetween(from, to);
            clock.set(clock.instant().plus(Duration.ofMinutes(10)));
        }
        faults.switchOff(fault, device);
        assertThat(number(UTILISATION) / 2.55).isLessThan(50);
    }

    @Test
    void processorMemoryAndClientsRise() {
        assertThat(number(CPU)).isLessThan(60);
        assertThat(number(MEMORY)).isLessThan(80);
        assertThat(number(CLIENTS)).isLessThan(40);
        faults.switchOn(Fault.CPU_BUSY, device);
        faults.switchOn(Fault.MEMORY_SHORT, device);
        faults.switchOn(Fault.CLIENTS_MANY, device);
        assertThat(number(CPU)).isGreaterThanOrEqualTo(96);
        assertThat(number(MEMORY)).isGreaterThanOrEqualTo(95);
        assertThat(number(CLIENTS)).isGreaterThanOrEqualTo(80);
    }

    @Test
    void retriesAndErrorsGrowOnlyWhileTheFaultLasts() {
        double usual = retries();
        faults.switchOn(Fault.RETRIES_MANY, device);
        faults.switchOn(Fault.PORT_ERRORS, device);
        assertThat(retries()).isBetween(0.35, 0.47).isGreaterThan(usual + 0.1);
        long before = number(ERRORS);
        clock.set(clock.instant().plus(Duration.ofMinutes(1)));
        assertThat(number(ERRORS) - before).isEqualTo(25 * 60);
        faults.switchOff(Fault.RETRIES_MANY, device);
        faults.switchOff(Fault.PORT_ERRORS, device);
        assertThat(retries()).isLessThan(0.2);
        before = number(ERRORS);
        clock.set(clock.instant().plus(Duration.ofMinutes(1)));
        assertThat(number(ERRORS) - before).isLessThan(60);
    }

    private double retries() {
        long frames = number(FRAMES);
        long retried = number(RETRIED);
        clock.set(clock.instant().plus(Duration.ofMinutes(1)));
        return (number(RETRIED) - retried) / (double) (number(FRAMES) - frames);
    }

    @Test
    void networksComeAndGo() {
        String guests = text(SSID + 2);
        assertThat(guests).contains("Guests");
        faults.switchOn(Fault.NETWORK_REMOVED, device);
        assertThat(text(SSID + 1)).contains("House");
        assertThat(text(SSID + 2)).startsWith("No Such Instance");
        faults.switchOff(Fault.NETWORK_REMOVED, device);
        assertThat(text(SSID + 2)).isEqualTo(guests);
        faults.switchOn(Fault.SETUP_NETWORK, device);
        clock.set(clock.instant().plus(Duration.ofMinutes(2)));
        assertThat(text(SSID + 4)).contains("Setup Tamarack");
        faults.switchOff(Fault.SETUP_NETWORK, device);
        assertThat(text(SSID + 4)).startsWith("No Such Instance");
    }
}
