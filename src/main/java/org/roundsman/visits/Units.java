package org.roundsman.visits;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.Device;
import org.roundsman.fleet.DeviceFacts;
import org.roundsman.fleet.Devices;
import org.roundsman.readings.DeviceHistory;
import org.roundsman.topology.Topology;
import org.roundsman.topology.TreeNode;

/** Gathers what is known of devices. */
@ApplicationScoped
class Units {

    private final Devices devices;
    private final DeviceFacts facts;
    private final Topology topology;
    private final DeviceHistory history;

    Units(Devices devices, DeviceFacts facts, Topology topology, DeviceHistory history) {
        this.devices = devices;
        this.facts = facts;
        this.topology = topology;
        this.history = history;
    }

    Optional<Unit> unit(CustomerScope scope, long deviceId) {
        return devices.find(scope, deviceId).map(device -> unit(scope, device));
    }

    Unit unit(CustomerScope scope, Device device) {
        return new Unit(
                device,
                facts.of(device.id).stream().collect(Collectors.toMap(DeviceFacts.Said::fact, DeviceFacts.Said::value)),
                topology.pathUp(scope, device.id),
                history.lastAnswered(device.id));
    }

    List<Device> ofSite(CustomerScope scope, long siteId) {
        return devices.ofSite(scope, siteId);
    }

    /** Ids of what stands above the device and of what hangs on it, the nearest first. */
    List<Long> around(CustomerScope scope, long deviceId) {
        return java.util.stream.Stream.concat(
                        topology.pathUp(scope, deviceId).stream(), topology.below(scope, deviceId).stream())
                .map(TreeNode::deviceId)
                .filter(id -> id != deviceId)
                .toList();
    }
}
