package org.roundsman.triage.store;

import java.time.Duration;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.rules.RuleTarget;

/** The devices and sites that are watched, as they were when they were last read. Immutable. */
public final class Fleet {

    private final Map<Long, Site> sites;
    private final Map<Long, Device> devices;
    private final Map<Long, List<Device>> bySite = new HashMap<>();

    public Fleet(Map<Long, Site> sites, Map<Long, Device> devices) {
        this.sites = Map.copyOf(sites);
        this.devices = Map.copyOf(devices);
        devices.values().forEach(device -> bySite.computeIfAbsent(device.siteId(), made -> new ArrayList<>())
                .add(device));
    }

    /** A site. */
    public record Site(long id, long customerId, String name, ZoneId zone) {}

    /**
     * A device.
     *
     * @param modelId 0 where it is not known
     */
    public record Device(
            long id, long siteId, DeviceKind kind, String name, boolean paused, Duration interval, long modelId) {}

    /** By id. */
    public Map<Long, Device> devices() {
        return devices;
    }

    /** By id. */
    public Map<Long, Site> sites() {
        return sites;
    }

    /** The devices of a site. */
    public List<Device> of(long siteId) {
        return bySite.getOrDefault(siteId, List.of());
    }

    /** What rules are asked of it. */
    public RuleTarget target(Device device) {
        Site site = sites.get(device.siteId());
        return new RuleTarget(site == null ? 0 : site.customerId(), device.siteId(), device.modelId(), device.id());
    }
}
