package org.roundsman.topology;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.BiFunction;
import org.roundsman.fleet.DeviceKind;

/**
 * What hangs on what at one site, for pages and for finding causes. Never has a circle, and each device stands in it once
 * with at most one device above it, whatever places it is made of: a place that would close a circle counts as unknown.
 * Immutable.
 *
 * <p>To find out why devices are silent, go up from each by {@link #pathUp} (each step has the port that leads to it, with
 * its state and power at the last reading) and count below a suspect by {@link #below}.
 *
 * @param roots gateways first, then what begins a tree without one; a device of which nothing is known stands alone
 */
public record SiteTree(List<TreeNode> roots) {

    public SiteTree {
        roots = List.copyOf(roots);
    }

    /** A device to be put into a tree. */
    public record Item(long deviceId, String name, DeviceKind kind, Attachment place) {}

    /**
     * Builds the tree.
     *
     * @param port gives the port of a device by its number
     */
    public static SiteTree of(Collection<Item> items, BiFunction<Long, Integer, Optional<Port>> port) {
        return new Building(items, port).tree();
    }

    /**
     * The way from a device up to the top: the device itself first. Each node's {@link TreeNode#port} is the port of the next
     * one on which it hangs. Empty when the device is not of this site.
     */
    public List<TreeNode> pathUp(long deviceId) {
        for (TreeNode root : roots) {
            List<TreeNode> path = new ArrayList<>();
            if (search(root, deviceId, path)) {
                return path;
            }
        }
        return List.of();
    }

    private static boolean search(TreeNode from, long deviceId, List<TreeNode> path) {
        boolean found = from.deviceId() == deviceId
                || from.children().stream().anyMatch(child -> search(child, deviceId, path));
        if (found) {
            path.add(from);
        }
        return found;
    }

    /** Everything that hangs on a device, directly or further down, from the top; without the device itself. */
    public List<TreeNode> below(long deviceId) {
        return node(deviceId).map(node -> node.all().skip(1).toList()).orElse(List.of());
    }

    /** The device's node, empty when it is not of this site. */
    public Optional<TreeNode> node(long deviceId) {
        return all().filter(node -> node.deviceId() == deviceId).findFirst();
    }

    /** Every device of the site, each once. */
    public java.util.stream.Stream<TreeNode> all() {
        return roots.stream().flatMap(TreeNode::all);
    }

    /** Devices of which nothing is known: they hang on nothing, nothing hangs on them, and they are no gateway. */
    public List<TreeNode> unknown() {
        return roots.stream().filter(SiteTree::isUnknown).toList();
    }

    /** Gateways, and what begins a tree without one. */
    public List<TreeNode> tops() {
        return roots.stream().filter(root -> !isUnknown(root)).toList();
    }

    private static boolean isUnknown(TreeNode root) {
        return root.kind() != DeviceKind.GATEWAY && root.children().isEmpty();
    }

    private static final class Building {
        private static final Comparator<Item> ORDER = Comparator.comparing((Item item) ->
                        item.kind() == DeviceKind.GATEWAY ? 0 : item.kind() == DeviceKind.NETWORK_SWITCH ? 1 : 2)
                .thenComparing(item -> item.name().toLowerCase(java.util.Locale.ROOT))
                .thenComparing(Item::deviceId);

        private final Map<Long, Item> items = new HashMap<>();
        private final Map<Long, List<Item>> children = new HashMap<>();
        private final List<Item> tops = new ArrayList<>();
        private final BiFunction<Long, Integer, Optional<Port>> ports;

        Building(Collection<Item> given, BiFunction<Long, Integer, Optional<Port>> ports) {
            this.ports = ports;
            given.forEach(item -> items.put(item.deviceId(), item));
            items.values().stream().sorted(ORDER).forEach(this::hang);
        }

        private void hang(Item item) {
            boolean rooted = !item.place().known()
                    || !items.containsKey(item.place().parentId().getAsLong())
                    || opens(item);
            if (rooted) {
                tops.add(item);
            } else {
                children.computeIfAbsent(item.place().parentId().getAsLong(), made -> new ArrayList<>())
                        .add(item);
            }
        }

        /** Whether a circle begins here: the first of its devices, by kind and name, is taken out of it. */
        private boolean opens(Item item) {
            Set<Long> seen = new HashSet<>();
            List<Item> way = new ArrayList<>();
            Item at = item;
            while (at != null && at.place().known() && seen.add(at.deviceId())) {
                way.add(at);
                at = items.get(at.place().parentId().getAsLong());
            }
            boolean circle = at != null && at.deviceId() == item.deviceId();
            return circle && way.stream().min(ORDER).orElseThrow().equals(item);
        }

        SiteTree tree() {
            return new SiteTree(tops.stream().map(this::node).toList());
        }

        private TreeNode node(Item item) {
            boolean hangs = item.place().known() && !tops.contains(item);
            Optional<Port> port = hangs && item.place().port().isPresent()
                    ? ports.apply(
                            item.place().parentId().getAsLong(),
                            item.place().port().getAsInt())
                    : Optional.empty();
            List<TreeNode> below = children.getOrDefault(item.deviceId(), List.of()).stream()
                    .sorted(Comparator.comparing(
                                    (Item child) -> order(child.place().port()))
                            .thenComparing(ORDER))
                    .map(this::node)
                    .toList();
            Attachment place = hangs || !item.place().known()
                    ? item.place()
                    : Attachment.unknown(
                            item.deviceId(), item.place().reason(), item.place().notes());
            return new TreeNode(item.deviceId(), item.name(), item.kind(), place, port, below);
        }

        private static int order(OptionalInt port) {
            return port.isPresent() && port.getAsInt() >= 0 ? port.getAsInt() : Integer.MAX_VALUE;
        }
    }
}
