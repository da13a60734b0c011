package org.roundsman.topology;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Optional;
import javax.sql.DataSource;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.Devices;
import org.roundsman.fleet.Sites;
import org.roundsman.topology.store.WiringRows;
import org.roundsman.topology.store.Work;

/**
 * What hangs on what. Everything is as of the last readings; a device that fell silent keeps the place that was last known.
 * Thread-safe.
 */
@ApplicationScoped
public class Topology {

    private final DataSource database;
    private final Sites sites;
    private final Devices devices;

    @Inject
    Topology(DataSource database, Sites sites, Devices devices) {
        this.database = database;
        this.sites = sites;
        this.devices = devices;
    }

    /** The tree of a site and all that stands behind it; empty when there is no such site in the scope. */
    public Optional<SiteWiring> wiring(CustomerScope scope, long siteId) {
        return sites.find(scope, siteId).map(site -> Work.ask(database, c -> WiringRows.of(c, site.id)));
    }

    /** The same for the service itself, which shows nothing of it to somebody without checking the customer scope. */
    public SiteWiring wiring(long siteId) {
        return Work.ask(database, c -> WiringRows.of(c, siteId));
    }

    /** The tree of a site; empty when there is no such site in the scope. */
    public Optional<SiteTree> tree(CustomerScope scope, long siteId) {
        return sites.find(scope, siteId).map(site -> Work.ask(database, c -> WiringRows.tree(c, site.id)));
    }

    /**
     * The way from a device up: the device itself first, then what it hangs on, up to the gateway where that is known. Each
     * node has the port of the next one on which it hangs, with state and power. Empty when there is no such device in the
     * scope.
     */
    public List<TreeNode> pathUp(CustomerScope scope, long deviceId) {
        return treeOf(scope, deviceId).map(tree -> tree.pathUp(deviceId)).orElse(List.of());
    }

    /** Everything that hangs on a device, directly or further down; empty also when there is no such device in the scope. */
    public List<TreeNode> below(CustomerScope scope, long deviceId) {
        return treeOf(scope, deviceId).map(tree -> tree.below(deviceId)).orElse(List.of());
    }

    private Optional<SiteTree> treeOf(CustomerScope scope, long deviceId) {
        return devices.find(scope, deviceId).map(device -> Work.ask(database, c -> WiringRows.tree(c, device.site.id)));
    }
}
