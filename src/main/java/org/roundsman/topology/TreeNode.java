package org.roundsman.topology;

import java.util.List;
import java.util.Optional;
import org.roundsman.fleet.DeviceKind;

/**
 * A device in the tree of its site.
 *
 * @param name as people entered it
 * @param place on what it hangs
 * @param port the port of the device above, with its state and power; empty where it is not known
 * @param children what hangs on it, by port, then name
 */
public record TreeNode(
        long deviceId, String name, DeviceKind kind, Attachment place, Optional<Port> port, List<TreeNode> children) {

    public TreeNode {
        children = List.copyOf(children);
    }

    /** This one and everything below it, from the top. */
    public java.util.stream.Stream<TreeNode> all() {
        return java.util.stream.Stream.concat(
                java.util.stream.Stream.of(this), children.stream().flatMap(TreeNode::all));
    }

    public boolean accessPoint() {
        return kind == DeviceKind.ACCESS_POINT;
    }
}
