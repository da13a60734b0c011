package org.roundsman.web.edit;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.roundsman.fleet.Credential;
import org.roundsman.fleet.CredentialSummary;
import org.roundsman.fleet.CredentialWeakness;
import org.roundsman.fleet.Credentials;
import org.roundsman.fleet.Customer;
import org.roundsman.fleet.Customers;
import org.roundsman.fleet.Device;
import org.roundsman.fleet.Devices;
import org.roundsman.fleet.InputRejected;
import org.roundsman.people.Role;
import org.roundsman.shared.Page;
import org.roundsman.web.page.Visitor;
import org.roundsman.web.page.Words;

/** SNMP credentials: whose they are, in which order they are tried, who uses them, and what is weak about them. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class CredentialPages {

    private static final int DEVICES_A_PAGE = 100;

    private final Credentials credentials;
    private final Customers customers;
    private final Devices devices;
    private final Visitor visitor;

    CredentialPages(Credentials credentials, Customers customers, Devices devices, Visitor visitor) {
        this.credentials = credentials;
        this.customers = customers;
        this.devices = devices;
        this.visitor = visitor;
    }

    /**
     * All credentials, or those that some device of one customer may use.
     *
     * @param chosen id of that customer, or empty
     * @param weak how many devices are read with weak ones, in words; empty where none is
     */
    record All(
            List<CredentialLine.Group> groups,
            List<Customer> customers,
            String chosen,
            String weak,
            List<RiskLine> risks) {}

    /** One weakness of the fleet, in words. */
    record RiskLine(String word, String text, String devices) {}

    /** One set of credentials with the devices that use it. */
    record One(
            Credential credential,
            String owner,
            String kind,
            List<CredentialWeakness> weak,
            String users,
            Page<Device> devices,
            String fault) {

        public boolean unused() {
            return devices.total() == 0;
        }
    }

    @CheckedTemplate(basePath = "edit")
    static class Templates {
        private Templates() {}

        static native TemplateInstance credentials(All all);

        static native TemplateInstance oneCredential(One one);
    }

    @GET
    @Path("credentials")
    public TemplateInstance all(@RestQuery @DefaultValue("") String customer) {
        Long only = customer.matches("[0-9]{1,17}") ? Long.valueOf(customer) : null;
        CredentialSummary summary = credentials.summary();
        String weak = summary.weak() == 0
                ? ""
                : Words.count(summary.weak()) + " of " + Words.many(summary.devices(), "device is", "devices are")
                        + " read with credentials about which something is weak.";
        return Templates.credentials(new All(
                CredentialLine.groups(credentials.usableBy(only), credentials.usage()),
                customers.all(visitor.scope()),
                only == null ? "" : only.toString(),
                weak,
                summary.risks().stream().map(CredentialPages::line).toList()));
    }

    private static RiskLine line(CredentialSummary.Risk risk) {
        return new RiskLine(
                risk.weakness().word(),
                risk.weakness().text(),
                Words.many(risk.credentials(), "set of credentials", "sets of credentials") + ", used by "
                        + (risk.devices() == 0 ? "no device" : Words.many(risk.devices(), "device", "devices")));
    }

    @GET
    @Path("credentials/{id}")
    public TemplateInstance one(@RestPath long id, @RestQuery @DefaultValue("1") String page) {
        return one(id, page, "");
    }

    private TemplateInstance one(long id, String page, String fault) {
        Credential credential = credentials.find(id).orElseThrow(NotFoundException::new);
        int number = page.matches("[1-9][0-9]{0,5}") ? Integer.parseInt(page) : 1;
        Page<Device> users = devices.using(visitor.scope(), id, number, DEVICES_A_PAGE);
        return Templates.oneCredential(new One(
                credential,
                credential.owner(),
                credential.summary(),
                List.copyOf(credential.weaknesses()),
                Words.many(users.total(), "device uses", "devices use"),
                users,
                fault));
    }

    @POST
    @Path("credentials/{id}/up")
    public Response up(@RestPath long id) {
        return moved(() -> credentials.moveUp(id).id);
    }

    @POST
    @Path("credentials/{id}/down")
    public Response down(@RestPath long id) {
        return moved(() -> credentials.moveDown(id).id);
    }

    private static Response moved(java.util.function.LongSupplier move) {
        try {
            return Response.seeOther(URI.create("/credentials#credential-" + move.getAsLong()))
                    .build();
        } catch (InputRejected e) {
            throw new NotFoundException(e);
        }
    }

    @POST
    @Path("credentials/{id}/remove")
    public Response remove(@RestPath long id) {
        try {
            credentials.remove(id);
            return Response.seeOther(URI.create("/credentials")).build();
        } catch (InputRejected e) {
            if (e.faults().containsKey("id")) {
                throw new NotFoundException(e);
            }
            return Response.status(422)
                    .entity(one(id, "1", "Not removed: " + e.faults().get("") + "."))
                    .build();
        }
    }
}
