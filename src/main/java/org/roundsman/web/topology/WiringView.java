package org.roundsman.web.topology;

import io.quarkus.qute.RawString;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.roundsman.topology.SiteWiring;
import org.roundsman.topology.TreeNode;
import org.roundsman.web.page.State;
import org.roundsman.web.page.Words;

/**
 * The wiring of a site.
 *
 * @param tops gateways, and what begins a tree without one
 * @param unknown devices of which nothing is known
 * @param doubts devices with notes that speak against what was found
 */
record WiringView(
        long siteId,
        String site,
        List<Spot> tops,
        List<Spot> unknown,
        List<Spot> doubts,
        List<Carrier> carriers,
        Instant now) {

    static WiringView of(
            long siteId, String site, SiteWiring wiring, Map<Long, State> states, ZoneId zone, Instant now) {
        List<Spot> tops = spots(wiring.tree().tops(), states, now);
        List<Spot> unknown = spots(wiring.tree().unknown(), states, now);
        List<Spot> all = Stream.concat(tops.stream(), unknown.stream())
                .flatMap(WiringView::all)
                .toList();
        return new WiringView(
                siteId,
                site,
                tops,
                unknown,
                all.stream().filter(spot -> !spot.place().notes().isEmpty()).toList(),
                all.stream()
                        .filter(spot -> !spot.node().accessPoint())
                        .map(spot -> Carrier.of(spot, wiring, zone, now))
                        .toList(),
                now);
    }

    private static List<Spot> spots(List<TreeNode> nodes, Map<Long, State> states, Instant now) {
        return nodes.stream().map(node -> Spot.of(node, states, "", now)).toList();
    }

    private static Stream<Spot> all(Spot spot) {
        return Stream.concat(Stream.of(spot), spot.children().stream().flatMap(WiringView::all));
    }

    public boolean empty() {
        return tops.isEmpty() && unknown.isEmpty();
    }

    public RawString picture() {
        return WiringPicture.of(site, tops, unknown);
    }

    public RawString list() {
        return WiringList.of(tops, unknown);
    }

    /** {@code 48 of 60 access points placed}. */
    public String summary() {
        List<Spot> points = new ArrayList<>(tops.stream()
                .flatMap(WiringView::all)
                .filter(spot -> spot.node().accessPoint())
                .toList());
        long alone = unknown.stream().filter(spot -> spot.node().accessPoint()).count();
        long placed = points.stream().filter(Spot::known).count();
        long all = points.size() + alone;
        if (all == 0) {
            return "No access point is entered for this site.";
        }
        return placed == 0
                ? "It is not known yet where the access points hang."
                : "The switch port of " + placed + " of " + Words.many(all, "access point", "access points")
                        + " is known.";
    }
}
