package org.roundsman.web.edit;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.roundsman.fleet.Customer;
import org.roundsman.fleet.CustomerDraft;
import org.roundsman.fleet.Customers;
import org.roundsman.fleet.Site;
import org.roundsman.fleet.Sites;
import org.roundsman.people.Role;
import org.roundsman.web.page.Faults;
import org.roundsman.web.page.Visitor;

/** Customers, added and changed by hand. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class CustomerPages {

    private final Customers customers;
    private final Sites sites;
    private final Visitor visitor;

    CustomerPages(Customers customers, Sites sites, Visitor visitor) {
        this.customers = customers;
        this.sites = sites;
        this.visitor = visitor;
    }

    /** A customer with its sites. */
    record Listed(Customer customer, List<Site> sites) {}

    /** What the form sent. */
    record Form(@RestForm String name, @RestForm String note) {
        CustomerDraft draft() {
            return new CustomerDraft(Entry.text(name), Entry.text(note));
        }
    }

    @CheckedTemplate(basePath = "edit")
    static class Templates {
        private Templates() {}

        static native TemplateInstance customers(List<Listed> customers);

        static native TemplateInstance customer(String heading, String action, Form form, Faults faults);
    }

    @GET
    @Path("customers")
    public TemplateInstance all() {
        Map<Long, List<Site>> byCustomer =
                sites.all(visitor.scope(), null).stream().collect(Collectors.groupingBy(site -> site.customer.id));
        return Templates.customers(customers.all(visitor.scope()).stream()
                .map(customer -> new Listed(customer, byCustomer.getOrDefault(customer.id, List.of())))
                .toList());
    }

    @GET
    @Path("customers/new")
    public TemplateInstance fresh() {
        return Templates.customer("Add a customer", "/customers", new Form("", ""), Faults.NONE);
    }

    @POST
    @Path("customers")
    public Response add(@BeanParam Form form) {
        return Saving.of(
                new Entry(),
                () -> "/customers/" + customers.add(form.draft()).id + "/sites/new",
                faults -> Templates.customer("Add a customer", "/customers", form, faults));
    }

    @GET
    @Path("customers/{id}/edit")
    public TemplateInstance edit(@RestPath long id) {
        Customer customer = customers.find(visitor.scope(), id).orElseThrow(NotFoundException::new);
        return Templates.customer(
                "Change " + customer.name, "/customers/" + id, new Form(customer.name, customer.note), Faults.NONE);
    }

    @POST
    @Path("customers/{id}")
    public Response change(@RestPath long id, @BeanParam Form form) {
        return Saving.of(
                new Entry(),
                () -> "/customers#customer-" + customers.change(id, form.draft()).id,
                faults -> Templates.customer("Change customer", "/customers/" + id, form, faults));
    }
}
