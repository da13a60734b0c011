package org.roundsman.web.claims;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.roundsman.claims.StoreRoom;
import org.roundsman.claims.StoreRooms;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.Customers;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.fleet.Model;
import org.roundsman.fleet.Models;
import org.roundsman.fleet.Site;
import org.roundsman.fleet.Sites;
import org.roundsman.web.claims.Entry.Choice;

/** What forms of spares and replacements let people choose from. */
@ApplicationScoped
class StoreChoices {

    private final StoreRooms rooms;
    private final Customers customers;
    private final Sites sites;
    private final Models models;

    StoreChoices(StoreRooms rooms, Customers customers, Sites sites, Models models) {
        this.rooms = rooms;
        this.customers = customers;
        this.sites = sites;
        this.models = models;
    }

    /** Choices under a heading. */
    record Group(String name, List<Choice> choices) {}

    /** Rooms, then sites by customer. */
    List<Group> places(CustomerScope scope, String chosen) {
        List<Group> groups = new ArrayList<>();
        groups.add(new Group(
                "Store rooms",
                rooms.all(scope).stream().map(room -> choice(room, chosen)).toList()));
        Map<String, List<Choice>> byCustomer = new LinkedHashMap<>();
        for (Site site : sites.all(scope, null)) {
            byCustomer
                    .computeIfAbsent(site.customer.name, made -> new ArrayList<>())
                    .add(choice(site, chosen));
        }
        byCustomer.forEach((customer, own) -> groups.add(new Group("Sites of " + customer, own)));
        return groups;
    }

    /** Rooms of the firm and of that customer, and the one site. */
    List<Group> near(CustomerScope scope, long customerId, Site site, String chosen) {
        List<Choice> own = rooms.all(scope).stream()
                .filter(room -> room.customerId().isEmpty() || room.customerId().getAsLong() == customerId)
                .map(room -> choice(room, chosen))
                .toList();
        return List.of(new Group("Store rooms", own), new Group("This site", List.of(choice(site, chosen))));
    }

    private static Choice choice(StoreRoom room, String chosen) {
        String value = "room-" + room.id();
        return new Choice(value, room.words(), value.equals(chosen));
    }

    private static Choice choice(Site site, String chosen) {
        String value = "site-" + site.id;
        return new Choice(value, site.name, value.equals(chosen));
    }

    List<Choice> models(String chosen) {
        return models.all().stream().map(model -> choice(model, chosen)).toList();
    }

    List<Choice> models(DeviceKind kind, String chosen) {
        return models.all().stream()
                .filter(model -> model.kind == kind)
                .map(model -> choice(model, chosen))
                .toList();
    }

    private static Choice choice(Model model, String chosen) {
        String value = String.valueOf(model.id);
        return new Choice(value, model.maker + " " + model.name, value.equals(chosen));
    }

    List<Choice> customers(CustomerScope scope, String chosen) {
        return customers.all(scope).stream()
                .map(one -> new Choice(
                        String.valueOf(one.id), one.name, String.valueOf(one.id).equals(chosen)))
                .toList();
    }
}
