package org.roundsman.topology.find;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import org.roundsman.topology.How;
import org.roundsman.topology.NeighbourSeen;
import org.roundsman.topology.NeighbourSeen.Ability;

/**
 * What LLDP says about places. Each neighbour that is a device of the site gives two candidates, since which of both ends
 * is the upper one is not known yet: the heard one hangs on the hearer's port, or the hearer on the heard one's.
 */
final class Links {

    /** An end that is only named by the neighbour is a little less sure than the port on which it was heard. */
    private static final int NAMED_BY_NEIGHBOUR = 10;

    private final Map<Long, Member> members;
    private final Map<Long, List<String>> notes = new HashMap<>();
    private final List<Candidate> candidates = new ArrayList<>();
    private final Map<Long, Set<Integer>> upperPorts = new HashMap<>();

    Links(Map<Long, Member> members, List<NeighbourSeen> heard) {
        this.members = members;
        Neighbours neighbours = new Neighbours(List.copyOf(members.values()));
        Map<NeighbourSeen, Neighbours.Match> matches = new HashMap<>();
        for (NeighbourSeen seen : heard) {
            if (members.containsKey(seen.deviceId())) {
                matches.put(seen, neighbours.match(seen.announced()));
            }
        }
        matches.forEach(this::markUpper);
        heard.stream().filter(matches::containsKey).forEach(seen -> take(seen, matches.get(seen)));
    }

    List<Candidate> candidates() {
        return candidates;
    }

    /** What is odd about each device. */
    Map<Long, List<String>> notes() {
        return notes;
    }

    /** Ports of a device on which LLDP showed a switch or gateway, of the site or a strange one. */
    Set<Integer> upperPorts(long device) {
        return upperPorts.getOrDefault(device, Set.of());
    }

    private void markUpper(NeighbourSeen seen, Neighbours.Match match) {
        boolean carries = match.device()
                .map(Member::carries)
                .orElseGet(() -> (seen.announced().able(Ability.BRIDGE)
                                || seen.announced().able(Ability.ROUTER))
                        && !seen.announced().able(Ability.WLAN_ACCESS_POINT));
        if (carries && seen.missed() == 0) {
            upperPorts.computeIfAbsent(seen.deviceId(), made -> new HashSet<>()).add(seen.port());
        }
    }

    private void take(NeighbourSeen seen, Neighbours.Match match) {
        Member hearer = members.get(seen.deviceId());
        String where = hearer.portTitle(seen.port()) + " of " + hearer.name();
        if (seen.missed() == 0) {
            for (String note : match.notes()) {
                Set<Long> about = new HashSet<>(match.suspects());
                match.device().ifPresent(device -> about.add(device.id()));
                about.forEach(id -> note(id, "On " + where + ": " + note + "."));
            }
        }
        match.device().ifPresent(heard -> {
            if (heard.id() == hearer.id()) {
                note(
                        hearer.id(),
                        "It hears itself on " + hearer.portTitle(seen.port()) + ": a loop, or a cable back to it.");
                return;
            }
            link(seen, match, hearer, heard);
        });
    }

    private void link(NeighbourSeen seen, Neighbours.Match match, Member hearer, Member heard) {
        boolean shared = !heard.carries() && upperPorts(hearer.id()).contains(seen.port());
        candidates.add(new Candidate(
                heard.id(),
                hearer.id(),
                OptionalInt.of(seen.port()),
                hearer.portName(seen.port()),
                How.LLDP,
                match.by().ordinal(),
                shared,
                seen.missed(),
                seen.firstSeen(),
                seen.lastSeen(),
                "LLDP: " + hearer.name() + " hears it on " + hearer.portTitle(seen.port()) + ", by its "
                        + match.reason()));
        OptionalInt port = Neighbours.portNamed(heard, seen.announced())
                .map(OptionalInt::of)
                .orElse(OptionalInt.empty());
        candidates.add(new Candidate(
                hearer.id(),
                heard.id(),
                port,
                port.isPresent() ? heard.portName(port.getAsInt()) : "",
                How.LLDP,
                match.by().ordinal() + NAMED_BY_NEIGHBOUR,
                false,
                seen.missed(),
                seen.firstSeen(),
                seen.lastSeen(),
                "LLDP: it hears " + heard.name() + " on its " + hearer.portTitle(seen.port()) + ", by "
                        + match.reason() + ", which names "
                        + (port.isPresent()
                                ? heard.portTitle(port.getAsInt())
                                : "its end “" + seen.announced().portOf().text() + "”")));
    }

    private void note(long device, String text) {
        List<String> of = notes.computeIfAbsent(device, made -> new ArrayList<>());
        if (!of.contains(text)) {
            of.add(text);
        }
    }
}
