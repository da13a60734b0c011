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
import java.time.ZoneId;
import java.util.List;
import org.jboss.resteasy.reactive.RestPath;
import org.roundsman.fleet.Customer;
import org.roundsman.fleet.Customers;
import org.roundsman.fleet.Site;
import org.roundsman.fleet.SiteDraft;
import org.roundsman.fleet.Sites;
import org.roundsman.people.Role;
import org.roundsman.web.page.Faults;
import org.roundsman.web.page.Visitor;

/** Sites, added and changed by hand. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class SiteEdits {

    private static final List<String> ZONES = ZoneId.getAvailableZoneIds().stream()
            .filter(zone -> zone.contains("/") && !zone.startsWith("Etc/") && !zone.startsWith("SystemV/"))
            .sorted()
            .toList();

    private final Customers customers;
    private final Sites sites;
    private final Visitor visitor;

    SiteEdits(Customers customers, Sites sites, Visitor visitor) {
        this.customers = customers;
        this.sites = sites;
        this.visitor = visitor;
    }

    @CheckedTemplate(basePath = "edit")
    static class Templates {
        private Templates() {}

        static native TemplateInstance site(
                String heading, String action, SiteForm form, List<String> zones, Faults faults);
    }

    @GET
    @Path("customers/{customerId}/sites/new")
    public TemplateInstance fresh(@RestPath long customerId) {
        return form("Add a site of " + customer(customerId).name, adding(customerId), SiteForm.blank(), Faults.NONE);
    }

    @POST
    @Path("customers/{customerId}/sites")
    public Response add(@RestPath long customerId, @BeanParam SiteForm form) {
        Customer customer = customer(customerId);
        Entry entry = new Entry();
        SiteDraft draft = form.draft(entry);
        return Saving.of(
                entry,
                () -> "/sites/" + sites.add(customer.id, draft).id,
                faults -> form("Add a site of " + customer.name, adding(customerId), form, faults));
    }

    @GET
    @Path("sites/{id}/edit")
    public TemplateInstance edit(@RestPath long id) {
        Site site = site(id);
        return form("Change " + site.name, "/sites/" + id, SiteForm.of(site), Faults.NONE);
    }

    @POST
    @Path("sites/{id}")
    public Response change(@RestPath long id, @BeanParam SiteForm form) {
        Site site = site(id);
        Entry entry = new Entry();
        SiteDraft draft = form.draft(entry);
        return Saving.of(
                entry,
                () -> "/sites/" + sites.change(id, draft).id,
                faults -> form("Change " + site.name, "/sites/" + id, form, faults));
    }

    private static TemplateInstance form(String heading, String action, SiteForm form, Faults faults) {
        return Templates.site(heading, action, form, ZONES, faults);
    }

    private static String adding(long customerId) {
        return "/customers/" + customerId + "/sites";
    }

    private Customer customer(long id) {
        return customers.find(visitor.scope(), id).orElseThrow(NotFoundException::new);
    }

    private Site site(long id) {
        return sites.find(visitor.scope(), id).orElseThrow(NotFoundException::new);
    }
}
