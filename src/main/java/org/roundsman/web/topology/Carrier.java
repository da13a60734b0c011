package org.roundsman.web.topology;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.roundsman.topology.NeighbourSeen;
import org.roundsman.topology.Port;
import org.roundsman.topology.PortState;
import org.roundsman.topology.PowerState;
import org.roundsman.topology.ReadNote;
import org.roundsman.topology.SiteWiring;
import org.roundsman.topology.Supply;
import org.roundsman.web.page.Words;

/**
 * A switch or gateway with its ports.
 *
 * @param read when and how it was read, in words
 * @param odd what was odd about that reading
 */
record Carrier(
        Spot spot,
        String summary,
        String read,
        List<String> odd,
        String supplies,
        List<PortLine> ports,
        List<NeighbourLine> neighbours) {

    static Carrier of(Spot spot, SiteWiring wiring, ZoneId zone, Instant now) {
        List<Port> ports = wiring.ports().getOrDefault(spot.id(), List.of());
        List<NeighbourSeen> heard = wiring.neighbours().getOrDefault(spot.id(), List.of());
        Map<Integer, List<NeighbourSeen>> byPort = heard.stream().collect(Collectors.groupingBy(NeighbourSeen::port));
        Map<Integer, List<Spot>> hanging = spot.children().stream()
                .filter(child -> child.place().port().isPresent())
                .collect(Collectors.groupingBy(child -> child.place().port().getAsInt()));
        Optional<ReadNote> note = Optional.ofNullable(wiring.reads().get(spot.id()));
        return new Carrier(
                spot,
                summary(ports),
                note.map(each -> read(each, now)).orElse("not read yet"),
                note.map(ReadNote::remarks).orElse(List.of()),
                wiring.supplies().getOrDefault(spot.id(), List.of()).stream()
                        .map(Supply::words)
                        .collect(Collectors.joining("; ")),
                ports.stream()
                        .map(port -> PortLine.of(
                                port,
                                hanging.getOrDefault(port.number(), List.of()),
                                byPort.getOrDefault(port.number(), List.of()),
                                now))
                        .toList(),
                heard.stream()
                        .map(each -> NeighbourLine.of(
                                each,
                                wiring.port(spot.id(), each.port())
                                        .map(Port::title)
                                        .orElse(""),
                                zone,
                                now))
                        .toList());
    }

    private static String summary(List<Port> ports) {
        long up = ports.stream().filter(port -> port.state() == PortState.UP).count();
        long powered = ports.stream()
                .flatMap(port -> port.power().stream())
                .filter(power -> power.state() == PowerState.DELIVERING)
                .count();
        long faulty = ports.stream()
                .flatMap(port -> port.power().stream())
                .filter(org.roundsman.topology.Power::faulty)
                .count();
        return Words.many(ports.size(), "port", "ports") + ", " + up + " up"
                + (powered > 0 ? ", " + powered + " deliver power" : "")
                + (faulty > 0 ? ", " + Words.many(faulty, "power fault", "power faults") : "");
    }

    private static String read(ReadNote note, Instant now) {
        String failed = note.outcome() == org.roundsman.measure.Outcome.ANSWERED
                ? ""
                : "; asked " + Words.ago(note.triedAt(), now) + " in vain: "
                        + note.outcome().text();
        if (note.readAt().isEmpty()) {
            return "not read yet" + failed;
        }
        String states = note.stateAt()
                .filter(at -> at.isAfter(note.readAt().get()))
                .map(at -> ", states " + Words.ago(at, now))
                .orElse("");
        return "read " + Words.ago(note.readAt().get(), now) + states
                + (note.lldp() ? "" : "; offers no LLDP")
                + (note.bridge() ? "" : "; offers no forwarding table")
                + (note.complete() ? "" : "; not in full")
                + failed;
    }
}
