package org.roundsman.boot;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import org.roundsman.fleet.Devices;
import org.roundsman.fleet.Models;
import org.roundsman.fleet.Networks;
import org.roundsman.fleet.Sites;

/** What sowing a site needs of the fleet. */
@ApplicationScoped
class FleetServices {

    private final Sites sites;
    private final Devices devices;
    private final Networks networks;
    private final Models models;

    @Inject
    FleetServices(Sites sites, Devices devices, Networks networks, Models models) {
        this.sites = sites;
        this.devices = devices;
        this.networks = networks;
        this.models = models;
    }

    Sites sites() {
        return sites;
    }

    Devices devices() {
        return devices;
    }

    Networks networks() {
        return networks;
    }

    Models models() {
        return models;
    }
}
