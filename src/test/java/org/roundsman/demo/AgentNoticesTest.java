package org.roundsman.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.io.IOException;
import java.net.InetSocketAddress;
import java.time.Duration;
import java.util.function.Predicate;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.fleet.DeviceKind;

/** Notifications of the invented agents, as net-snmp's snmptrapd takes them in: names by RFC 3418 and RFC 2863. */
class AgentNoticesTest {

    private static final int PORT = 26_167;
    private static final String NAME = ".1.3.6.1.6.3.1.1.4.1.0 = OID: ";
    private static final String COLD_START = NAME + ".1.3.6.1.6.3.1.1.5.1";
    private static final String WARM_START = NAME + ".1.3.6.1.6.3.1.1.5.2";
    private static final String LINK_DOWN = NAME + ".1.3.6.1.6.3.1.1.5.3";
    private static final String LINK_UP = NAME + ".1.3.6.1.6.3.1.1.5.4";

    private final SetClock clock = new SetClock("2026-11-25T10:02:30Z");
    private final DemoFleet fleet = DemoFleet.of(250, 11, 26_168);
    private final Faults faults = Faults.byHandOnly(fleet, clock);
    private TrapDaemon daemon;
    private AgentNotices notices;

    @BeforeEach
    void start() throws IOException {
        daemon = TrapDaemon.start(PORT, fleet);
        await().until(daemon::listens);
        notices = AgentNotices.start(faults, clock, new InetSocketAddress("127.0.0.1", PORT));
    }

    @AfterEach
    void stop() {
        notices.close();
        daemon.close();
    }

    private void pass(int seconds) {
        clock.set(clock.instant().plus(Duration.ofSeconds(seconds)));
    }

    private DemoDevice well(boolean versionThree, boolean old, Predicate<DemoDevice> also) {
        long now = clock.millis();
        return fleet.devices().stream()
                .filter(d -> d.accepts() instanceof DemoCredential.User == versionThree)
                .filter(d -> versionThree || d.site() % 4 == 3 == old)
                .filter(also)
                .filter(d -> fleet.siteOf(d).devices().stream()
                        .allMatch(o -> faults.silences(o, now - 600_000, now + 3_600_000)
                                .isEmpty()))
                .findFirst()
                .orElseThrow();
    }

    private DemoDevice above(DemoDevice device) {
        return faults.cabling().across(faults.cabling().up(device).orElseThrow(), device);
    }

    private String line(DemoDevice from, String part) {
        String source = "[" + from.host() + "]:";
        await().atMost(Duration.ofSeconds(20)).untilAsserted(() -> assertThat(daemon.lines())
                .anyMatch(line -> line.contains(source) && line.contains(part)));
        return daemon.lines().stream()
                .filter(line -> line.contains(source) && line.contains(part))
                .findFirst()
                .orElseThrow();
    }

    private void powerComesBack(DemoDevice accessPoint) {
        pass(60);
        faults.switchOff(Fault.PORT_DEAD, accessPoint);
    }

    /** A v2c and a v3 device tell the same; snmptrapd shows version 3 by its user's name. */
    @Test
    void aDeadPortAndItsMendAreToldBySwitchAndAccessPoint() {
        for (boolean versionThree : new boolean[] {false, true}) {
            DemoDevice accessPoint = well(versionThree, false, DemoDevice::isAccessPoint);
            DemoDevice above = above(accessPoint);
            int port = faults.cabling().up(accessPoint).orElseThrow().abovePort();
            faults.switchOn(Fault.PORT_DEAD, accessPoint);
            String down = line(above, LINK_DOWN);
            String row = ".1.3.6.1.2.1.2.2.1.";
            assertThat(down)
                    .contains(
                            row + "1." + (10_000 + port) + " = INTEGER: " + (10_000 + port),
                            row + "7." + (10_000 + port) + " = INTEGER: 1",
                            row + "8." + (10_000 + port) + " = INTEGER: 2");
            if (accessPoint.accepts() instanceof DemoCredential.User user) {
                assertThat(down).contains("TRAP2, SNMP v3, user " + user.userName());
            } else {
                assertThat(down).contains("TRAP2, SNMP v2c, community demo-");
            }
            powerComesBack(accessPoint);
            pass(30);
            assertThat(line(above, LINK_UP)).contains(row + "8." + (10_000 + port) + " = INTEGER: 1");
            pass(100);
            assertThat(line(accessPoint, COLD_START)).contains(".1.3.6.1.2.1.1.3.0 = Timeticks: (13000)");
        }
    }

    /** RFC 1157: agent address, enterprise, generic and specific number, time. */
    @Test
    void anOldSiteTellsInVersionOne() {
        DemoDevice accessPoint = well(false, true, DemoDevice::isAccessPoint);
        faults.switchOn(Fault.PORT_DEAD, accessPoint);
        DemoDevice above = above(accessPoint);
        assertThat(line(above, "TRAP, SNMP v1, community demo-"))
                .startsWith("one | " + above.host() + " | .1.3.6.1.4.1.32473.1.20 | 2 | ");
        powerComesBack(accessPoint);
        pass(130);
        assertThat(line(accessPoint, "TRAP, SNMP v1"))
                .startsWith("one | " + accessPoint.host() + " | " + "."
                        + accessPoint.model().objectId() + " | 0 | ");
        faults.switchOn(Fault.FAN_FAILED, above);
        assertThat(line(above, "| .1.3.6.1.4.1.32473.3 | 6 | .2 |"))
                .contains(".1.3.6.1.4.1.32473.2.2.5.0 = INTEGER: 2");
    }

    @Test
    void theMakersOwnAreToldWithTheirVariables() {
        DemoDevice device = well(true, false, d -> d.radios().stream().anyMatch(DemoRadio::sharesWithRadar));
        faults.switchOn(Fault.RADAR_SEEN, device);
        assertThat(line(device, NAME + ".1.3.6.1.4.1.32473.3.0.1"))
                .contains(".1.3.6.1.4.1.32473.2.3.1.1.4.2 = INTEGER: 36");
        DemoDevice above = above(device);
        faults.switchOn(Fault.FAN_FAILED, above);
        assertThat(line(above, NAME + ".1.3.6.1.4.1.32473.3.0.2")).contains("2.2.5.0 = INTEGER: 2");
        faults.switchOff(Fault.FAN_FAILED, above);
        assertThat(line(above, NAME + ".1.3.6.1.4.1.32473.3.0.3")).contains("2.2.5.0 = INTEGER: 1");
    }

    @Test
    void anUpdateEndsInAWarmStart() {
        DemoDevice device = well(false, false, DemoDevice::isAccessPoint);
        faults.switchOn(Fault.FIRMWARE_UPDATED, device);
        line(above(device), LINK_DOWN);
        pass(125);
        line(device, WARM_START);
    }

    @Test
    void withoutItsLineNothingOfASiteGetsOut() {
        DemoDevice dark = well(false, false, DemoDevice::isAccessPoint);
        DemoSite site = fleet.siteOf(dark);
        faults.switchOn(Fault.UPLINK_LOST, site);
        faults.switchOn(Fault.PORT_DEAD, dark);
        DemoDevice other = well(true, false, d -> d.kind() == DeviceKind.NETWORK_SWITCH);
        faults.switchOn(Fault.FAN_FAILED, other);
        // what comes later is there, and so would be what came before
        line(other, NAME + ".1.3.6.1.4.1.32473.3.0.2");
        assertThat(daemon.lines())
                .noneMatch(line -> line.contains("[" + above(dark).host() + "]:"));
    }
}
