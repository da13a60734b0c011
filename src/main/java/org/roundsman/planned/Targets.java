package org.roundsman.planned;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.roundsman.fleet.Customer;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.Customers;
import org.roundsman.fleet.Device;
import org.roundsman.fleet.Devices;
import org.roundsman.fleet.InputRejected;
import org.roundsman.fleet.Site;
import org.roundsman.fleet.Sites;

/** Finds what is to be worked on. */
@ApplicationScoped
class Targets {

    private final Customers customers;
    private final Sites sites;
    private final Devices devices;

    @Inject
    Targets(Customers customers, Sites sites, Devices devices) {
        this.customers = customers;
        this.sites = sites;
        this.devices = devices;
    }

    /**
     * @throws InputRejected naming the customer, site or device when it is not there or lies outside the scope
     */
    Target find(CustomerScope scope, PlanDraft.Where where) {
        Optional<Target> found =
                switch (where.reach()) {
                    case CUSTOMER -> customers.find(scope, where.id()).map(one -> of(scope, one));
                    case SITE -> sites.find(scope, where.id()).map(Targets::of);
                    case DEVICE -> devices.find(scope, where.id()).map(Targets::of);
                };
        String field = where.reach().name().toLowerCase(java.util.Locale.ROOT);
        return found.orElseThrow(() -> new InputRejected(Map.of(field, "there is no such " + field)));
    }

    private Target of(CustomerScope scope, Customer customer) {
        List<ZoneId> zones = sites.all(scope, customer.id).stream()
                .map(Site::zone)
                .distinct()
                .toList();
        return new Target(
                Reach.CUSTOMER, customer.id, customer.name, OptionalLong.empty(), "", OptionalLong.empty(), "", zones);
    }

    private static Target of(Site site) {
        return new Target(
                Reach.SITE,
                site.customer.id,
                site.customer.name,
                OptionalLong.of(site.id),
                site.name,
                OptionalLong.empty(),
                "",
                List.of(site.zone()));
    }

    private static Target of(Device device) {
        Site site = device.site;
        return new Target(
                Reach.DEVICE,
                site.customer.id,
                site.customer.name,
                OptionalLong.of(site.id),
                site.name,
                OptionalLong.of(device.id),
                device.name,
                List.of(site.zone()));
    }
}
