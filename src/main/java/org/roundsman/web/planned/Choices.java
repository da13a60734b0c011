package org.roundsman.web.planned;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.Customers;
import org.roundsman.fleet.Device;
import org.roundsman.fleet.Devices;
import org.roundsman.fleet.Site;
import org.roundsman.fleet.Sites;
import org.roundsman.planned.PlanDraft;

/** What a person may choose to work on, from where that person came. */
@ApplicationScoped
class Choices {

    private final Customers customers;
    private final Sites sites;
    private final Devices devices;

    Choices(Customers customers, Sites sites, Devices devices) {
        this.customers = customers;
        this.sites = sites;
        this.devices = devices;
    }

    /** Some of a kind. */
    record Group(String name, List<Choice> choices) {}

    record Choice(String code, String text) {}

    /** The place itself, what is around it and what is in it; without a place, every site and every customer. */
    List<Group> around(CustomerScope scope, Optional<PlanDraft.Where> where) {
        Optional<Site> site = where.flatMap(place -> site(scope, place));
        return site.map(found -> around(scope, found)).orElseGet(() -> all(scope));
    }

    private Optional<Site> site(CustomerScope scope, PlanDraft.Where place) {
        return switch (place.reach()) {
            case CUSTOMER -> Optional.empty();
            case SITE -> sites.find(scope, place.id());
            case DEVICE -> devices.find(scope, place.id()).map((Device device) -> device.site);
        };
    }

    private List<Group> around(CustomerScope scope, Site site) {
        List<Choice> wide = List.of(
                new Choice("site-" + site.id, site.name + " with all its devices"),
                new Choice("customer-" + site.customer.id, "All sites of " + site.customer.name));
        List<Choice> within = devices.ofSite(scope, site.id).stream()
                .map(device -> new Choice("device-" + device.id, device.name))
                .toList();
        return List.of(new Group("Sites", wide), new Group("One device of " + site.name, within));
    }

    private List<Group> all(CustomerScope scope) {
        List<Group> groups = new ArrayList<>();
        groups.add(new Group(
                "All sites of a customer",
                customers.all(scope).stream()
                        .map(one -> new Choice("customer-" + one.id, "All sites of " + one.name))
                        .toList()));
        groups.add(new Group(
                "One site",
                sites.all(scope, null).stream()
                        .map(one -> new Choice("site-" + one.id, one.customer.name + ": " + one.name))
                        .toList()));
        return groups;
    }
}
