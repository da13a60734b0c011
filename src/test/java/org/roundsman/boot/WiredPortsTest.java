package org.roundsman.boot;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.topology.Attachment;
import org.roundsman.topology.How;
import org.roundsman.topology.Port;
import org.roundsman.topology.PortState;
import org.roundsman.topology.SiteTree;
import org.roundsman.topology.SiteWiring;

/** Names of ports by ifIndex, ifName and ifDescr of IF-MIB (RFC 2863); what they sound like is our own choice. */
class WiredPortsTest {

    private static final long SWITCH = 1;

    private final List<SiteTree.Item> items = new ArrayList<>(List.of(new SiteTree.Item(
            SWITCH,
            "garden-switch",
            DeviceKind.NETWORK_SWITCH,
            Attachment.unknown(SWITCH, "Nothing seen.", List.of()))));

    private static Port port(int number, String name, String description) {
        return new Port(
                number,
                name,
                description,
                "",
                "",
                Port.ETHERNET,
                OptionalInt.empty(),
                OptionalLong.of(1_000),
                PortState.UP,
                0,
                Optional.empty(),
                true);
    }

    private void hangs(String name, OptionalInt port) {
        long id = items.size() + 1;
        Attachment place = new Attachment(
                id, OptionalLong.of(SWITCH), port, "", How.LLDP, "Heard.", List.of(), false, Optional.empty());
        items.add(new SiteTree.Item(id, name, DeviceKind.ACCESS_POINT, place));
    }

    private Map<Integer, String> words(Port... ports) {
        SiteTree tree = SiteTree.of(items, (device, number) -> Optional.empty());
        return WiredPorts.words(
                new SiteWiring(tree, Map.of(SWITCH, List.of(ports)), Map.of(), Map.of(), Map.of()), SWITCH);
    }

    @Test
    void aPortIsCalledByItsNameAndWhoHangsThere() {
        hangs("garden-ap-09", OptionalInt.of(10_013));
        hangs("garden-ap-10", OptionalInt.empty());
        assertThat(words(port(10_013, "13", "Slot 0 Port 13"), port(10_024, "24", ""), port(10_025, "", "Port 25")))
                .isEqualTo(Map.of(10_013, "port 13 (garden-ap-09)", 10_024, "port 24", 10_025, "Port 25"));
    }

    @Test
    void ofManyBehindAPortTheFirstAreNamed() {
        IntStream.rangeClosed(1, 5).forEach(n -> hangs("hall-ap-" + n, OptionalInt.of(7)));
        assertThat(words(port(7, "ge7", ""))).containsEntry(7, "port ge7 (hall-ap-1, hall-ap-2 and 3 more)");
    }

    @Test
    void aPortWithoutANameKeepsItsNumber() {
        hangs("garden-ap-09", OptionalInt.of(10_013));
        assertThat(words(port(10_013, "", ""), port(10_024, "", "")))
                .isEqualTo(Map.of(10_013, "interface 10013 (garden-ap-09)"));
    }

    @Test
    void aDeviceThatWasNeverReadHasNoNames() {
        assertThat(WiredPorts.words(
                        new SiteWiring(new SiteTree(List.of()), Map.of(), Map.of(), Map.of(), Map.of()), SWITCH))
                .isEmpty();
    }
}
