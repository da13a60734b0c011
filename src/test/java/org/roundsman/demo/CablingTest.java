package org.roundsman.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.roundsman.fleet.DeviceKind;

/** Cables that a person could have laid: one way to the gateway for each device, one plug in each port. */
class CablingTest {

    @ParameterizedTest
    @ValueSource(ints = {250, 260, 4000})
    void everyDeviceHasOneWayToItsGateway(int size) {
        DemoFleet fleet = DemoFleet.of(size, DemoFleet.USUAL_SEED);
        Cabling cabling = Cabling.of(fleet);
        for (DemoDevice device : fleet.devices()) {
            DemoDevice at = device;
            for (int steps = 0; at.kind() != DeviceKind.GATEWAY; steps++) {
                assertThat(steps).isLessThan(20);
                DemoLink up = cabling.up(at).orElseThrow();
                DemoDevice above = cabling.across(up, at);
                assertThat(above.isAccessPoint()).isFalse();
                assertThat(above.site()).isEqualTo(device.site());
                assertThat(cabling.down(above)).contains(up);
                at = above;
            }
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {250, 260, 4000})
    void noPortHasTwoPlugsAndPowerFollowsTheModel(int size) {
        DemoFleet fleet = DemoFleet.of(size, 3);
        Cabling cabling = Cabling.of(fleet);
        Set<Long> macs = new HashSet<>();
        for (DemoDevice device : fleet.devices()) {
            assertThat(macs.add(device.mac())).isTrue();
            Set<Integer> ports = new HashSet<>();
            cabling.up(device).ifPresent(up -> ports.add(up.belowPort()));
            for (DemoLink link : cabling.down(device)) {
                assertThat(ports.add(link.abovePort())).isTrue();
                DemoDevice below = cabling.across(link, device);
                PowerFeed feed = !below.isAccessPoint()
                        ? PowerFeed.MAINS
                        : below.model().poeClass() == null ? PowerFeed.INJECTOR : PowerFeed.PORT;
                assertThat(link.feed()).isEqualTo(feed);
            }
            for (DemoStation station : cabling.stations(device)) {
                assertThat(ports.add(station.port())).isTrue();
                assertThat(macs.add(station.mac())).isTrue();
                // locally administered, and no group address
                assertThat(station.mac() >> 40 & 3).isEqualTo(2);
            }
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {250, 260})
    void isTheSameEachTimeAndSwitchesOfEveryMannerOccur(int size) {
        DemoFleet fleet = DemoFleet.of(size, DemoFleet.USUAL_SEED);
        List<DemoDevice> switches = fleet.devices().stream()
                .filter(d -> d.kind() == DeviceKind.NETWORK_SWITCH)
                .toList();
        Cabling one = Cabling.of(fleet);
        Cabling other = Cabling.of(DemoFleet.of(size, DemoFleet.USUAL_SEED));
        assertThat(switches).allSatisfy(s -> {
            assertThat(other.down(s)).isEqualTo(one.down(s));
            assertThat(other.stations(s)).isEqualTo(one.stations(s));
        });
        assertThat(switches.stream().map(Cabling::manner)).contains(SwitchManner.values());
    }
}
