package org.roundsman.web.discovery;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Optional;
import org.roundsman.discovery.Sweeps;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.Site;
import org.roundsman.fleet.Sites;

/** A site and its sweeps. */
@ApplicationScoped
class SweepSite {

    private final Sites sites;
    private final Sweeps sweeps;

    SweepSite(Sites sites, Sweeps sweeps) {
        this.sites = sites;
        this.sweeps = sweeps;
    }

    Optional<Site> find(CustomerScope scope, long id) {
        return sites.find(scope, id);
    }

    Sweeps sweeps() {
        return sweeps;
    }
}
