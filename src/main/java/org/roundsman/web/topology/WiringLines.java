package org.roundsman.web.topology;

import jakarta.enterprise.context.RequestScoped;
import jakarta.inject.Named;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.roundsman.topology.SiteTree;
import org.roundsman.topology.Topology;
import org.roundsman.topology.TreeNode;
import org.roundsman.web.page.Visitor;
import org.roundsman.web.page.Words;

/** A few words about wiring on pages of other areas; templates know it as {@code inject:wiring}. */
@Named("wiring")
@RequestScoped
public class WiringLines {

    private final Topology topology;
    private final Visitor visitor;
    private final Clock clock;

    WiringLines(Topology topology, Visitor visitor, Clock clock) {
        this.topology = topology;
        this.visitor = visitor;
        this.clock = clock;
    }

    /**
     * Where one device hangs.
     *
     * @param parentId 0 where it is not known
     * @param notes what speaks against it
     * @param below what hangs on it, in words, or empty
     */
    public record Place(
            long parentId,
            String parent,
            String port,
            String how,
            String line,
            List<String> notes,
            String below,
            boolean gateway) {

        public boolean known() {
            return parentId != 0;
        }
    }

    /** Where a device hangs, and what hangs on it. */
    public Place of(long deviceId) {
        Instant now = clock.instant();
        List<TreeNode> path = topology.pathUp(visitor.scope(), deviceId);
        if (path.isEmpty()) {
            return new Place(0, "", "", "", "", List.of(), "", false);
        }
        TreeNode parent = path.size() > 1 ? path.get(1) : null;
        Spot spot = Spot.of(path.get(0), Map.of(), parent == null ? "" : parent.name(), now);
        return new Place(
                parent == null ? 0 : parent.deviceId(),
                parent == null ? "" : parent.name(),
                spot.place().portTitle(),
                spot.known(now),
                spot.line(),
                spot.place().notes(),
                below(path.get(0)),
                spot.gateway());
    }

    private static String below(TreeNode node) {
        long direct = node.children().size();
        long all = node.all().count() - 1;
        if (all == 0) {
            return "";
        }
        return Words.many(direct, "device hangs", "devices hang") + " on it"
                + (all == direct ? "" : " (" + all + " with those further down)");
    }

    /** How much is known of a site, in words. */
    public String summary(long siteId) {
        Optional<SiteTree> tree = topology.tree(visitor.scope(), siteId);
        long all = tree.stream()
                .flatMap(SiteTree::all)
                .filter(TreeNode::accessPoint)
                .count();
        long placed = tree.stream()
                .flatMap(SiteTree::all)
                .filter(node -> node.accessPoint() && node.place().known())
                .count();
        if (all == 0) {
            return "no access point is entered";
        }
        return placed == 0
                ? "not known yet where its access points hang"
                : "the switch port of " + placed + " of " + Words.many(all, "access point", "access points")
                        + " is known";
    }
}
