package org.roundsman.web.topology;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.roundsman.topology.Port;
import org.roundsman.topology.SiteWiring;
import org.roundsman.topology.TreeNode;

/** Ports on which a device may be said to hang. */
final class PortChoices {

    /** The ports of one device above. */
    public record Group(String name, List<Choice> choices) {}

    /** One port. */
    public record Choice(String value, String text, boolean chosen) {}

    private PortChoices() {}

    /** Gateways first, then switches, then access points that others may hang on by radio; never the device itself. */
    static List<Group> of(SiteWiring wiring, long deviceId, String chosen) {
        return wiring.tree()
                .all()
                .filter(node -> node.deviceId() != deviceId)
                .sorted(java.util.Comparator.comparing(
                                (TreeNode node) -> -node.kind().ordinal())
                        .thenComparing(TreeNode::name))
                .map(node -> group(wiring, node, chosen))
                .toList();
    }

    private static Group group(SiteWiring wiring, TreeNode node, String chosen) {
        List<Choice> choices = new ArrayList<>();
        choices.add(choice(node.deviceId() + ":", "on " + node.name() + ", port not known", chosen));
        if (!node.accessPoint()) {
            for (Port port : wiring.ports().getOrDefault(node.deviceId(), List.of())) {
                choices.add(choice(
                        node.deviceId() + ":" + port.number(),
                        port.title() + " of " + node.name() + ": " + PortLine.stateWords(port)
                                + port.power()
                                        .map(power -> ", " + power.words())
                                        .orElse("") + used(node, port),
                        chosen));
            }
        }
        return new Group(node.name() + ", " + node.kind().word(), choices);
    }

    private static String used(TreeNode node, Port port) {
        String names = node.children().stream()
                .filter(child ->
                        child.place().port().isPresent() && child.place().port().getAsInt() == port.number())
                .map(TreeNode::name)
                .collect(Collectors.joining(", "));
        return names.isEmpty() ? "" : ", has " + names;
    }

    private static Choice choice(String value, String text, String chosen) {
        return new Choice(value, text, value.equals(chosen));
    }
}
