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
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.roundsman.fleet.Credential;
import org.roundsman.fleet.CredentialDraft;
import org.roundsman.fleet.Credentials;
import org.roundsman.people.Role;
import org.roundsman.web.page.Faults;

/** SNMP credentials, added and changed by hand. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class CredentialEdits {

    private static final List<String> AUTH = List.of("SHA1", "SHA224", "SHA256", "SHA384", "SHA512");
    private static final List<String> PRIV = List.of("AES128", "AES192", "AES256");

    private final Credentials credentials;
    private final CredentialOwners owners;

    CredentialEdits(Credentials credentials, CredentialOwners owners) {
        this.credentials = credentials;
        this.owners = owners;
    }

    /** What can be chosen. */
    record Lists(List<String> auth, List<String> priv, List<CredentialOwners.Owner> owners) {}

    @CheckedTemplate(basePath = "edit")
    static class Templates {
        private Templates() {}

        static native TemplateInstance credential(
                String heading, String action, CredentialForm form, Lists lists, Faults faults);
    }

    @GET
    @Path("credentials/new")
    public TemplateInstance fresh(@RestQuery String owner) {
        return form("Add credentials", "/credentials", CredentialForm.blank(Entry.text(owner)), Faults.NONE);
    }

    @POST
    @Path("credentials")
    public Response add(@BeanParam CredentialForm form) {
        Entry entry = new Entry();
        CredentialDraft draft = form.draft(entry);
        return Saving.of(
                entry,
                () -> "/credentials/" + credentials.add(draft).id,
                faults -> form("Add credentials", "/credentials", form, faults));
    }

    @GET
    @Path("credentials/{id}/edit")
    public TemplateInstance edit(@RestPath long id) {
        Credential credential = credentials.find(id).orElseThrow(NotFoundException::new);
        return form("Change " + credential.name, "/credentials/" + id, CredentialForm.of(credential), Faults.NONE);
    }

    @POST
    @Path("credentials/{id}")
    public Response change(@RestPath long id, @BeanParam CredentialForm form) {
        Entry entry = new Entry();
        CredentialDraft draft = form.draft(entry);
        return Saving.of(
                entry,
                () -> "/credentials/" + credentials.change(id, draft).id,
                faults -> form("Change credentials", "/credentials/" + id, form, faults));
    }

    private TemplateInstance form(String heading, String action, CredentialForm form, Faults faults) {
        return Templates.credential(
                heading, action, form, new Lists(AUTH, PRIV, owners.all()), ownerInOneField(faults));
    }

    /** The form has one list for customers and sites. */
    private static Faults ownerInOneField(Faults faults) {
        Map<String, String> byField = new LinkedHashMap<>(faults.byField());
        for (String field : List.of("customerId", "siteId")) {
            if (faults.in(field)) {
                byField.put("owner", faults.at(field));
            }
        }
        return new Faults(byField);
    }
}
