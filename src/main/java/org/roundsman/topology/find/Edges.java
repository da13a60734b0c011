package org.roundsman.topology.find;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.topology.How;
import org.roundsman.topology.Port;

/**
 * What forwarding tables say about places. A bridge learns an address on the port that leads towards it, so every bridge of
 * a site learns a device somewhere; only an edge port tells where it hangs: one on which no switch or gateway was learnt or
 * heard, with few addresses (an access point brings those of its clients). A device learnt on exactly one edge port hangs
 * there. For switches: one hangs below another when the other learnt it away from the gateway, and directly below when no
 * third is between them.
 */
final class Edges {

    private record Place(long bridge, int port) {}

    private final Evidence evidence;
    private final Map<Long, Member> members;
    private final Links links;
    private final Map<String, Member> owners = new HashMap<>();
    /** By device: where its addresses were learnt, the newest evidence of each place. */
    private final Map<Long, Map<Place, Evidence.Learnt>> places = new HashMap<>();
    /** Ports on which switches and gateways were learnt at the last reading. */
    private final Map<Place, Set<Long>> carriers = new HashMap<>();

    private final List<Candidate> candidates = new ArrayList<>();
    private final Map<Long, List<String>> notes = new HashMap<>();

    Edges(Evidence evidence, Map<Long, Member> members, Links links) {
        this.evidence = evidence;
        this.members = members;
        this.links = links;
        own();
        evidence.learnt().forEach(this::place);
        members.values().stream().sorted(Comparator.comparing(Member::id)).forEach(member -> {
            if (member.carries()) {
                below(member);
            } else {
                edge(member);
            }
        });
    }

    List<Candidate> candidates() {
        return candidates;
    }

    Map<Long, List<String>> notes() {
        return notes;
    }

    /** An address that two devices claim belongs to neither. */
    private void own() {
        Set<String> twice = new HashSet<>();
        for (Member member : members.values()) {
            for (String mac : member.macs()) {
                Member other = owners.put(mac, member);
                if (other != null && other.id() != member.id()) {
                    twice.add(mac);
                }
            }
        }
        twice.forEach(owners::remove);
    }

    private void place(Evidence.Learnt learnt) {
        Member owner = owners.get(learnt.mac());
        if (owner == null || owner.id() == learnt.deviceId() || !members.containsKey(learnt.deviceId())) {
            return;
        }
        Place place = new Place(learnt.deviceId(), learnt.port());
        places.computeIfAbsent(owner.id(), made -> new HashMap<>())
                .merge(place, learnt, (a, b) -> a.missed() <= b.missed() ? a : b);
        if (owner.carries() && learnt.missed() == 0) {
            carriers.computeIfAbsent(place, made -> new HashSet<>()).add(owner.id());
        }
    }

    private void edge(Member device) {
        Map<Place, Evidence.Learnt> all = places.getOrDefault(device.id(), Map.of());
        Map<Place, Evidence.Learnt> now = latest(all);
        List<Place> edges = new ArrayList<>();
        List<String> refused = new ArrayList<>();
        for (Place place : sorted(now.keySet())) {
            String why = notAnEdge(place);
            if (why.isEmpty()) {
                edges.add(place);
            } else {
                refused.add(title(place) + " (" + why + ")");
            }
        }
        if (edges.size() == 1) {
            add(device, edges.get(0), now.get(edges.get(0)), "an edge port, and no other edge port has it");
        } else if (edges.size() > 1) {
            note(
                    device,
                    "Its address was learnt on several edge ports and decides nothing: "
                            + edges.stream().map(this::title).collect(Collectors.joining(", ")) + ".");
        } else if (!refused.isEmpty()) {
            note(
                    device,
                    "Its address was learnt only where it does not tell a place: " + String.join(", ", refused) + ".");
        }
    }

    /** What was there at the last readings; where nothing was, all of it. */
    private static Map<Place, Evidence.Learnt> latest(Map<Place, Evidence.Learnt> all) {
        Map<Place, Evidence.Learnt> now = all.entrySet().stream()
                .filter(entry -> entry.getValue().missed() == 0)
                .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue));
        return now.isEmpty() ? all : now;
    }

    private static List<Place> sorted(Collection<Place> places) {
        return places.stream()
                .sorted(Comparator.comparing(Place::bridge).thenComparing(Place::port))
                .toList();
    }

    private String notAnEdge(Place place) {
        if (carriers.containsKey(place) || links.upperPorts(place.bridge).contains(place.port)) {
            return "it leads to a switch or gateway";
        }
        int macs = members.get(place.bridge).port(place.port).map(Port::macs).orElse(0);
        return macs > evidence.edgeMacs() ? macs + " addresses are too many for an edge port" : "";
    }

    private String title(Place place) {
        Member bridge = members.get(place.bridge);
        return bridge.portTitle(place.port) + " of " + bridge.name();
    }

    /** The switches above a switch: those that learnt it away from their way to the gateway. */
    private void below(Member device) {
        Map<Long, Place> above = new TreeMap<>();
        Map<Place, Evidence.Learnt> now = latest(places.getOrDefault(device.id(), Map.of()));
        for (Place place : sorted(now.keySet())) {
            OptionalInt up = uplink(place.bridge);
            boolean root = members.get(place.bridge).kind() == DeviceKind.GATEWAY;
            if ((root || up.isPresent() && up.getAsInt() != place.port) && device.kind() != DeviceKind.GATEWAY) {
                above.put(place.bridge, place);
            }
        }
        Predicate<Long> direct = bridge -> above.keySet().stream()
                .noneMatch(between -> between != bridge.longValue() && isBelow(between, above.get(bridge)));
        List<Long> parents = above.keySet().stream().filter(direct).toList();
        if (parents.size() == 1) {
            Place place = above.get(parents.get(0));
            add(device, place, now.get(place), "and no other switch is between them");
        }
    }

    /** Whether a device was learnt on that very port. */
    private boolean isBelow(long device, Place port) {
        return places.getOrDefault(device, Map.of()).containsKey(port);
    }

    /** The one port on which a bridge learnt the gateways. */
    private OptionalInt uplink(long bridge) {
        List<Integer> ports = carriers.entrySet().stream()
                .filter(entry -> entry.getKey().bridge == bridge)
                .filter(entry ->
                        entry.getValue().stream().anyMatch(id -> members.get(id).kind() == DeviceKind.GATEWAY))
                .map(entry -> entry.getKey().port)
                .distinct()
                .toList();
        return ports.size() == 1 ? OptionalInt.of(ports.get(0)) : OptionalInt.empty();
    }

    private void add(Member device, Place place, Evidence.Learnt learnt, String why) {
        Member bridge = members.get(place.bridge);
        candidates.add(new Candidate(
                device.id(),
                place.bridge,
                OptionalInt.of(place.port),
                bridge.portName(place.port),
                How.FORWARDING,
                0,
                false,
                learnt.missed(),
                learnt.firstSeen(),
                learnt.lastSeen(),
                "Forwarding table: " + bridge.name() + " learnt its address " + learnt.mac() + " on "
                        + bridge.portTitle(place.port) + ", " + why));
    }

    private void note(Member device, String text) {
        notes.computeIfAbsent(device.id(), made -> new ArrayList<>()).add(text);
    }
}
