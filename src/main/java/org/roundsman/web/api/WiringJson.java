package org.roundsman.web.api;

import java.time.Instant;
import java.util.List;
import java.util.OptionalInt;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.roundsman.topology.Attachment;
import org.roundsman.topology.NeighbourSeen;
import org.roundsman.topology.Port;
import org.roundsman.topology.Power;
import org.roundsman.topology.ReadNote;
import org.roundsman.topology.SiteWiring;
import org.roundsman.topology.Supply;
import org.roundsman.topology.TreeNode;

/** What hangs on what at one site, as of the last readings. */
@Schema(name = "Wiring")
record WiringJson(
        @Schema(examples = "21") long siteId,

        @Schema(description = "Gateways first, then what begins a tree without one")
        List<Node> tops,

        @Schema(description = "Devices of which no place is known, and on which nothing hangs")
        List<Node> unplaced) {

    static WiringJson of(long siteId, SiteWiring wiring) {
        return new WiringJson(
                siteId,
                wiring.tree().tops().stream().map(node -> Node.of(node, wiring)).toList(),
                wiring.tree().unknown().stream()
                        .map(node -> Node.of(node, wiring))
                        .toList());
    }

    /** A device with its ports and what hangs on it. */
    @Schema(name = "WiringNode")
    record Node(
            @Schema(examples = "412") long deviceId,
            @Schema(examples = "sw-2") String name,
            @Schema(examples = "network-switch") String kind,
            Place place,

            @Schema(nullable = true, description = "How reading it went; null when it was never asked")
            Read read,

            @Schema(description = "In the order of bridge ports; none where it was never read")
            List<PortJson> ports,

            @Schema(description = "What feeds its ports with power")
            List<SupplyJson> supplies,

            @Schema(description = "What hangs on it, by port, then name")
            List<Node> children) {

        static Node of(TreeNode node, SiteWiring wiring) {
            List<NeighbourSeen> heard = wiring.neighbours().getOrDefault(node.deviceId(), List.of());
            return new Node(
                    node.deviceId(),
                    node.name(),
                    Choice.word(node.kind()),
                    Place.of(node.place()),
                    wiring.reads().containsKey(node.deviceId())
                            ? Read.of(wiring.reads().get(node.deviceId()))
                            : null,
                    wiring.ports().getOrDefault(node.deviceId(), List.of()).stream()
                            .map(port -> PortJson.of(port, heard))
                            .toList(),
                    wiring.supplies().getOrDefault(node.deviceId(), List.of()).stream()
                            .map(SupplyJson::of)
                            .toList(),
                    node.children().stream()
                            .map(child -> Node.of(child, wiring))
                            .toList());
        }
    }

    /** On what a device hangs. */
    @Schema(name = "WiringPlace")
    record Place(
            @Schema(nullable = true, description = "The device above it; null when not known", examples = "412")
            Long deviceId,

            @Schema(
                    nullable = true,
                    description = "Number of that device's port, as in its ports; null when not known",
                    examples = "7")
            Integer port,

            @Schema(description = "What that device calls the port, or empty", examples = "ge-0/0/7")
            String portName,

            @Schema(description = "How that is known: person, lldp, forwarding, or nothing", examples = "lldp")
            String how,

            @Schema(description = "The evidence in words", examples = "sw-2 hears it by LLDP on port 7")
            String reason,

            @Schema(description = "What speaks against it, and other links")
            List<String> notes,

            @Schema(description = "The evidence was missing at the last readings; it stays until other takes its place")
            boolean old,

            @Schema(
                    nullable = true,
                    description = "When the evidence was last seen, or the person spoke",
                    examples = "2026-03-04T12:00:00Z")
            Instant seenAt) {

        static Place of(Attachment place) {
            return new Place(
                    place.parentId().isPresent() ? place.parentId().getAsLong() : null,
                    number(place.port()),
                    place.portName(),
                    Choice.word(place.how()),
                    place.reason(),
                    place.notes(),
                    place.old(),
                    place.seenAt().orElse(null));
        }
    }

    /** A port. */
    @Schema(name = "WiringPort")
    record PortJson(
            @Schema(description = "ifIndex (IF-MIB); negative where only LLDP's number is known", examples = "7")
            int number,

            @Schema(examples = "ge-0/0/7") String name,
            @Schema(examples = "Gigabit port 7") String description,

            @Schema(description = "As people called it on the device itself", examples = "waiting room")
            String alias,

            @Schema(
                    description = "ifOperStatus (RFC 2863): up, down, testing, unknown, dormant, not-present, "
                            + "lower-layer-down",
                    examples = "up")
            String state,

            @Schema(nullable = true, description = "Mbit/s (1000000 bit)", examples = "1000")
            Long speedMbit,

            @Schema(description = "Addresses learnt on it at the last full reading", examples = "1")
            int addresses,

            @Schema(description = "It was there at the last full reading")
            boolean present,

            @Schema(nullable = true, description = "Null where it delivers none, or is not known to")
            PowerJson power,

            @Schema(description = "What it hears by LLDP (IEEE 802.1AB)")
            List<Heard> heard) {

        static PortJson of(Port port, List<NeighbourSeen> heard) {
            return new PortJson(
                    port.number(),
                    port.name(),
                    port.description(),
                    port.alias(),
                    Choice.word(port.state()),
                    port.speedMbit().isPresent() ? port.speedMbit().getAsLong() : null,
                    port.macs(),
                    port.present(),
                    port.power().map(PowerJson::of).orElse(null),
                    heard.stream()
                            .filter(each -> each.port() == port.number())
                            .map(Heard::of)
                            .toList());
        }
    }

    /** Power over Ethernet of a port. */
    @Schema(name = "WiringPower")
    record PowerJson(
            @Schema(
                    description =
                            "pethPsePortDetectionStatus (RFC 3621): disabled, searching, delivering, fault, test, "
                                    + "other-fault, or unknown",
                    examples = "delivering")
            String state,

            @Schema(nullable = true, description = "0 to 4; known only while it delivers", examples = "4")
            Integer powerClass,

            @Schema(description = "It may deliver") boolean enabled,

            @Schema(
                    description = "How it was found to be of this port: bridge-port, interface, or order (check before"
                            + " relying on it)",
                    examples = "bridge-port")
            String match) {

        static PowerJson of(Power power) {
            return new PowerJson(
                    Choice.word(power.state()),
                    number(power.powerClass()),
                    power.enabled(),
                    Choice.word(power.match()));
        }
    }

    /** A neighbour, as it announces itself. */
    @Schema(name = "WiringNeighbour")
    record Heard(
            @Schema(description = "The system name that it announces, or empty", examples = "ap-waiting-room")
            String systemName,

            @Schema(description = "Its chassis in words", examples = "00:00:5e:00:53:11")
            String chassis,

            @Schema(examples = "2026-03-04T12:00:00Z") Instant lastSeen) {

        static Heard of(NeighbourSeen seen) {
            return new Heard(
                    seen.announced().systemName(), seen.announced().chassis().words(), seen.lastSeen());
        }
    }

    /** A supply of power for ports. */
    @Schema(name = "WiringSupply")
    record SupplyJson(
            @Schema(description = "pethMainPseGroupIndex", examples = "1")
            int group,

            @Schema(description = "State and load in words", examples = "on, 120 of 370 W")
            String state,

            @Schema(description = "Nominal", examples = "370")
            int watts,

            @Schema(description = "Measured, of the whole supply", examples = "120")
            int usedWatts) {

        static SupplyJson of(Supply supply) {
            return new SupplyJson(supply.group(), supply.words(), supply.watts(), supply.usedWatts());
        }
    }

    /** How reading went. */
    @Schema(name = "WiringRead")
    record Read(
            @Schema(examples = "2026-03-04T12:00:00Z") Instant triedAt,
            @Schema(examples = "answered") String outcome,

            @Schema(nullable = true, description = "The last full reading that was answered")
            Instant readAt,

            @Schema(nullable = true, description = "The last reading of port and power states")
            Instant stateAt,

            @Schema(description = "Nothing was cut short in the last full reading")
            boolean complete,

            @Schema(description = "It offers LLDP's tables") boolean lldp,

            @Schema(description = "It offers a forwarding table")
            boolean bridge,

            @Schema(description = "It delivers power and says so")
            boolean power,

            @Schema(description = "What was odd") List<String> remarks) {

        static Read of(ReadNote note) {
            return new Read(
                    note.triedAt(),
                    Choice.word(note.outcome()),
                    note.readAt().orElse(null),
                    note.stateAt().orElse(null),
                    note.complete(),
                    note.lldp(),
                    note.bridge(),
                    note.power(),
                    note.remarks());
        }
    }

    static Integer number(OptionalInt value) {
        return value.isPresent() ? value.getAsInt() : null;
    }
}
