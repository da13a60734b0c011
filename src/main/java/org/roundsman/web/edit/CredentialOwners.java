package org.roundsman.web.edit;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.roundsman.fleet.Customers;
import org.roundsman.fleet.Site;
import org.roundsman.fleet.Sites;
import org.roundsman.web.page.Visitor;

/** Whose credentials can be: every customer's, and each customer's and site's. */
@ApplicationScoped
class CredentialOwners {

    private final Sites sites;
    private final Customers customers;
    private final Visitor visitor;

    CredentialOwners(Sites sites, Customers customers, Visitor visitor) {
        this.sites = sites;
        this.customers = customers;
        this.visitor = visitor;
    }

    /** One to choose. */
    record Owner(String value, String text) {}

    /** Customers by name, each with its sites. */
    List<Owner> all() {
        Map<Long, List<Owner>> byCustomer = new LinkedHashMap<>();
        customers
                .all(visitor.scope())
                .forEach(customer -> add(
                        byCustomer,
                        customer.id,
                        CredentialForm.CUSTOMER + customer.id,
                        customer.name + ", every site"));
        for (Site site : sites.all(visitor.scope(), null)) {
            String text = site.customer.name + ", only " + site.name;
            add(byCustomer, site.customer.id, CredentialForm.SITE + site.id, text);
        }
        return byCustomer.values().stream().flatMap(List::stream).toList();
    }

    private static void add(Map<Long, List<Owner>> byCustomer, long customerId, String value, String text) {
        byCustomer.computeIfAbsent(customerId, id -> new ArrayList<>()).add(new Owner(value, text));
    }
}
