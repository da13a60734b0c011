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
import org.jboss.resteasy.reactive.RestPath;
import org.roundsman.fleet.Credential;
import org.roundsman.fleet.CredentialDraft;
import org.roundsman.fleet.Credentials;
import org.roundsman.fleet.Customer;
import org.roundsman.fleet.Customers;
import org.roundsman.people.Role;
import org.roundsman.web.page.Faults;
import org.roundsman.web.page.Visitor;

/** SNMP credentials, added and changed by hand. */
@Path("/credentials")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class CredentialPages {

    private static final Lists PROTOCOLS =
            new Lists(List.of("SHA1", "SHA224", "SHA256", "SHA384", "SHA512"), List.of("AES128", "AES192", "AES256"));

    private final Credentials credentials;
    private final Customers customers;
    private final Visitor visitor;

    CredentialPages(Credentials credentials, Customers customers, Visitor visitor) {
        this.credentials = credentials;
        this.customers = customers;
        this.visitor = visitor;
    }

    /** Credentials in the list: never a secret. */
    record Listed(long id, String name, String customer, String summary, long users) {}

    /** What can be chosen. */
    record Lists(List<String> auth, List<String> priv) {}

    @CheckedTemplate(basePath = "edit")
    static class Templates {
        private Templates() {}

        static native TemplateInstance credentials(List<Listed> credentials);

        static native TemplateInstance credential(
                String heading,
                String action,
                CredentialForm form,
                List<Customer> customers,
                Lists lists,
                Faults faults);
    }

    @GET
    public TemplateInstance all() {
        return Templates.credentials(credentials.usableBy(null).stream()
                .map(c -> new Listed(
                        c.id,
                        c.name,
                        c.customer == null ? "every customer" : c.customer.name,
                        c.summary(),
                        credentials.users(c.id)))
                .toList());
    }

    @GET
    @Path("new")
    public TemplateInstance fresh() {
        return form("Add credentials", "/credentials", CredentialForm.blank(), Faults.NONE);
    }

    @POST
    public Response add(@BeanParam CredentialForm form) {
        Entry entry = new Entry();
        CredentialDraft draft = form.draft(entry);
        return Saving.of(
                entry,
                () -> "/credentials#credential-" + credentials.add(draft).id,
                faults -> form("Add credentials", "/credentials", form, faults));
    }

    @GET
    @Path("{id}/edit")
    public TemplateInstance edit(@RestPath long id) {
        Credential credential = credentials.find(id).orElseThrow(NotFoundException::new);
        return form("Change " + credential.name, "/credentials/" + id, CredentialForm.of(credential), Faults.NONE);
    }

    @POST
    @Path("{id}")
    public Response change(@RestPath long id, @BeanParam CredentialForm form) {
        Entry entry = new Entry();
        CredentialDraft draft = form.draft(entry);
        return Saving.of(
                entry,
                () -> "/credentials#credential-" + credentials.change(id, draft).id,
                faults -> form("Change credentials", "/credentials/" + id, form, faults));
    }

    private TemplateInstance form(String heading, String action, CredentialForm form, Faults faults) {
        return Templates.credential(heading, action, form, customers.all(visitor.scope()), PROTOCOLS, faults);
    }
}
