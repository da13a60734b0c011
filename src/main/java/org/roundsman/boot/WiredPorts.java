package org.roundsman.boot;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.context.control.ActivateRequestContext;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.Devices;
import org.roundsman.topology.Port;
import org.roundsman.topology.SiteWiring;
import org.roundsman.topology.Topology;
import org.roundsman.topology.TreeNode;
import org.roundsman.traps.PortNames;

/** Names ports for notifications as the wiring of the site has them, with the devices that hang there. */
@ApplicationScoped
class WiredPorts implements PortNames {

    /** Behind a port with a plain switch there may be many. */
    private static final int MOST_NAMED = 2;

    private final Devices devices;
    private final Topology topology;

    @Inject
    WiredPorts(Devices devices, Topology topology) {
        this.devices = devices;
        this.topology = topology;
    }

    @Override
    @ActivateRequestContext
    public Map<Integer, String> of(long deviceId) {
        return devices.find(CustomerScope.everyone(), deviceId)
                .map(device -> words(topology.wiring(device.site.id), deviceId))
                .orElse(Map.of());
    }

    /** The ports of that device of the site, by ifIndex. */
    static Map<Integer, String> words(SiteWiring wiring, long deviceId) {
        Map<Integer, List<String>> hanging = new HashMap<>();
        for (TreeNode child :
                wiring.tree().node(deviceId).map(TreeNode::children).orElse(List.of())) {
            child.place().port().ifPresent(port -> hanging.computeIfAbsent(port, made -> new ArrayList<>())
                    .add(child.name()));
        }
        Map<Integer, String> words = new HashMap<>();
        for (Port port : wiring.ports().getOrDefault(deviceId, List.of())) {
            String who = who(hanging.getOrDefault(port.number(), List.of()));
            boolean nameless = port.name().isEmpty() && port.description().isEmpty();
            if (!nameless) {
                words.put(port.number(), port.title() + who);
            } else if (!who.isEmpty()) {
                // its number is an ifIndex and stands on no port
                words.put(port.number(), "interface " + port.number() + who);
            }
        }
        return words;
    }

    private static String who(List<String> names) {
        if (names.isEmpty()) {
            return "";
        }
        int more = names.size() - MOST_NAMED;
        String first = String.join(", ", names.subList(0, Math.min(MOST_NAMED, names.size())));
        return " (" + first + (more > 0 ? " and " + more + " more" : "") + ")";
    }
}
