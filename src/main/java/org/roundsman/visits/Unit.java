package org.roundsman.visits;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.roundsman.fleet.Device;
import org.roundsman.measure.Reading;
import org.roundsman.topology.TreeNode;

/**
 * One device of a visit.
 *
 * @param device with its model, if that is known
 * @param said what it says about itself, by name of the fact
 * @param up the way up: the device itself first, each with the port of the next one; empty when nothing is known
 * @param last the last reading that answered
 */
public record Unit(Device device, Map<String, String> said, List<TreeNode> up, Optional<Reading> last) {

    public Unit {
        said = Map.copyOf(said);
        up = List.copyOf(up);
    }
}
