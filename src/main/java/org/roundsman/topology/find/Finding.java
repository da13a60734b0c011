package org.roundsman.topology.find;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.topology.Attachment;
import org.roundsman.topology.How;

/**
 * Finds out on what each device of a site hangs. A person's word comes first and stays; then LLDP, then forwarding tables;
 * evidence that was missing lately comes after all that was not, and stays until something takes its place. What speaks
 * against the choice stands in its notes. Pure: the same evidence gives the same places.
 */
public final class Finding {

    private static final int MOST_NOTES = 12;

    private final Evidence evidence;
    private final Map<Long, Member> members;
    private final Links links;
    private final Edges edges;
    private final List<Candidate> candidates = new ArrayList<>();
    private final Map<Long, String> homeless = new TreeMap<>();

    private Finding(Evidence evidence) {
        this.evidence = evidence;
        this.members = evidence.members().stream().collect(Collectors.toMap(Member::id, Function.identity()));
        this.links = new Links(members, evidence.neighbours());
        this.edges = new Edges(evidence, members, links);
        candidates.addAll(links.candidates());
        candidates.addAll(edges.candidates());
        candidates.removeIf(this::senseless);
        evidence.words().forEach(this::word);
    }

    /** The place of every member: exactly one attachment each, at most one device above each, and no circles. */
    public static Map<Long, Attachment> places(Evidence evidence) {
        return new Finding(evidence).places();
    }

    /**
     * By itself a gateway hangs on nothing of its site, and a switch not on an access point: that a switch sits behind a
     * wireless bridge a person has to say.
     */
    private boolean senseless(Candidate candidate) {
        Member child = members.get(candidate.child());
        Member parent = members.get(candidate.parent());
        return child == null
                || parent == null
                || child.kind() == DeviceKind.GATEWAY
                || child.carries() && !parent.carries();
    }

    private void word(Evidence.Word word) {
        Member parent = members.get(word.parentId());
        if (!members.containsKey(word.deviceId()) || parent == null || word.parentId() == word.deviceId()) {
            homeless.put(word.deviceId(), word.by() + " set a device that is not at this site.");
            return;
        }
        candidates.add(new Candidate(
                word.deviceId(),
                word.parentId(),
                word.port(),
                word.portName(),
                How.PERSON,
                0,
                false,
                0,
                word.at(),
                word.at(),
                "Set by " + word.by()));
    }

    private Map<Long, Attachment> places() {
        Map<Long, Optional<Candidate>> chosen = Placement.of(members, candidates);
        Map<Long, Attachment> places = new TreeMap<>();
        members.keySet().forEach(id -> places.put(id, attachment(members.get(id), chosen)));
        return places;
    }

    private Attachment attachment(Member device, Map<Long, Optional<Candidate>> chosen) {
        Optional<Candidate> place = chosen.get(device.id());
        Set<String> notes = new LinkedHashSet<>();
        Optional.ofNullable(homeless.get(device.id())).ifPresent(notes::add);
        place.ifPresent(best -> notes.addAll(others(best, chosen)));
        if (place.isEmpty()) {
            notes.addAll(circle(device));
        }
        notes.addAll(links.notes().getOrDefault(device.id(), List.of()));
        boolean byWeaker = place.filter(best -> best.how() != How.FORWARDING).isPresent();
        if (!byWeaker) {
            notes.addAll(edges.notes().getOrDefault(device.id(), List.of()));
        }
        List<String> shown = notes.stream().limit(MOST_NOTES).toList();
        return place.map(best -> attached(best, shown))
                .orElseGet(() -> Attachment.unknown(device.id(), why(device), shown));
    }

    private Attachment attached(Candidate best, List<String> notes) {
        boolean old = best.how() != How.PERSON && best.missed() >= evidence.oldAfter();
        return new Attachment(
                best.child(),
                best.parentId(),
                best.port(),
                best.portName(),
                best.how(),
                best.reason(),
                notes,
                old,
                Optional.of(best.lastSeen()).filter(at -> !at.equals(Instant.EPOCH)));
    }

    /** Other places that the last readings speak for. Links to what hangs below the device are no contradiction. */
    private List<String> others(Candidate best, Map<Long, Optional<Candidate>> chosen) {
        List<String> notes = new ArrayList<>();
        for (Candidate other : candidates) {
            boolean against = other.child() == best.child()
                    && other.how() != How.PERSON
                    && other.current()
                    && !other.samePlace(best)
                    && !hangsOn(other.parent(), best.child(), chosen);
            if (against) {
                boolean word = best.how() == How.PERSON;
                notes.add((word ? "Does not fit what was set: " : "Also: ") + other.reason() + ".");
            }
        }
        return notes;
    }

    private static boolean hangsOn(long device, long parent, Map<Long, Optional<Candidate>> chosen) {
        return chosen.getOrDefault(device, Optional.empty())
                .filter(place -> place.parent() == parent)
                .isPresent();
    }

    /** A device that begins a tree although a person set a place for it: the places set run in a circle. */
    private List<String> circle(Member device) {
        return candidates.stream()
                .filter(c -> c.child() == device.id() && c.how() == How.PERSON)
                .map(c -> "What was set runs in a circle: " + device.name() + " on "
                        + members.get(c.parent()).name() + ", which hangs on it in turn. Take one of them back.")
                .toList();
    }

    private static String why(Member device) {
        return device.kind() == DeviceKind.GATEWAY
                ? "The gateway is where the site begins"
                : "No switch or gateway of the site hears it by LLDP or learnt its address on an edge port";
    }
}
