package org.roundsman.topology.find;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.topology.How;

/**
 * Chooses for each device at most one device above it, from the gateways downwards: a device is placed below one that is
 * placed already, so that no circle can come about, whatever the evidence says. Within a layer the strongest evidence wins;
 * weaker kinds are looked at only when stronger ones lead nowhere further. What no gateway leads to begins a tree of its own
 * at the switch that most others hang on.
 */
final class Placement {

    private final Map<Long, Member> members;
    private final Map<Long, List<Candidate>> of = new TreeMap<>();
    private final Set<Long> bound = new HashSet<>();
    private final Map<Long, Optional<Candidate>> placed = new TreeMap<>();

    private Placement(Map<Long, Member> members, Collection<Candidate> candidates) {
        this.members = members;
        candidates.stream().filter(c -> c.how() == How.PERSON).forEach(c -> bound.add(c.child()));
        for (Candidate candidate : candidates) {
            // A person's word about a device leaves nothing else to look at.
            if (candidate.how() == How.PERSON || !bound.contains(candidate.child())) {
                of.computeIfAbsent(candidate.child(), made -> new ArrayList<>()).add(candidate);
            }
        }
        of.values().forEach(list -> list.sort(Candidate.BEST));
    }

    /**
     * The candidate chosen for each device; empty for one that begins a tree.
     *
     * @param candidates between members only
     */
    static Map<Long, Optional<Candidate>> of(Map<Long, Member> members, Collection<Candidate> candidates) {
        Placement placement = new Placement(members, candidates);
        placement.run();
        return placement.placed;
    }

    private void run() {
        ids().filter(id -> members.get(id).kind() == DeviceKind.GATEWAY && !bound.contains(id))
                .forEach(id -> placed.put(id, Optional.empty()));
        // All switches first: an access point must not hang on the one that happens to be looked at first.
        growCarriers();
        for (Optional<Long> root = root(true); root.isPresent(); root = root(true)) {
            placed.put(root.get(), Optional.empty());
            growCarriers();
        }
        grow();
        for (Optional<Long> root = root(false); root.isPresent(); root = root(false)) {
            placed.put(root.get(), Optional.empty());
            grow();
        }
    }

    private void growCarriers() {
        boolean more = true;
        while (more) {
            more = false;
            for (int tier = 0; tier < Candidate.TIERS && !more; tier++) {
                more = layer(tier, true, true);
            }
        }
    }

    private Stream<Long> ids() {
        return members.keySet().stream().sorted();
    }

    /** Places all that hangs on what is placed: switches, then access points, then what hangs on access points. */
    private void grow() {
        boolean more = true;
        while (more) {
            growCarriers();
            boolean any = false;
            for (int tier = 0; tier < Candidate.TIERS && !any; tier++) {
                any = layer(tier, false, true);
            }
            for (int tier = 0; tier < Candidate.TIERS && !any; tier++) {
                any = layer(tier, true, false) || layer(tier, false, false);
            }
            more = any;
        }
    }

    /** One layer of switches and gateways, or of access points, below such; false when there was none. */
    private boolean layer(int tier, boolean carriers, boolean belowCarriers) {
        Map<Long, Optional<Candidate>> layer = new TreeMap<>();
        ids().filter(id -> !placed.containsKey(id) && members.get(id).carries() == carriers)
                .forEach(id -> of.getOrDefault(id, List.of()).stream()
                        .filter(c -> c.tier() <= tier && placed.containsKey(c.parent()))
                        .filter(c -> members.get(c.parent()).carries() == belowCarriers)
                        .findFirst()
                        .ifPresent(best -> layer.put(id, Optional.of(best))));
        placed.putAll(layer);
        return !layer.isEmpty();
    }

    /**
     * Where to begin a tree without a gateway: switches before access points, the one that most others may hang on.
     *
     * @param carriersOnly only switches and gateways of which nobody set where they hang
     */
    private Optional<Long> root(boolean carriersOnly) {
        Comparator<Long> order = Comparator.comparing((Long id) -> bound.contains(id))
                .thenComparing(id -> !members.get(id).carries())
                .thenComparing(id -> -childrenOf(id))
                .thenComparing(id -> id);
        return ids().filter(id -> !placed.containsKey(id))
                .filter(id -> !carriersOnly || members.get(id).carries() && !bound.contains(id))
                .min(order);
    }

    private long childrenOf(long id) {
        return of.values().stream()
                .flatMap(List::stream)
                .filter(c -> c.parent() == id && !placed.containsKey(c.child()))
                .map(Candidate::child)
                .distinct()
                .count();
    }
}
