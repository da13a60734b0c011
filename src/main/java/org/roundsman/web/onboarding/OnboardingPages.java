package org.roundsman.web.onboarding;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import java.text.Normalizer;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.roundsman.fleet.Customer;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.Customers;
import org.roundsman.fleet.FleetExport;
import org.roundsman.fleet.TransferTable;
import org.roundsman.people.Role;
import org.roundsman.web.page.Visitor;

/** How a customer comes under watch, files to begin with, and the tables as files. */
@Path("/onboarding")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class OnboardingPages {

    private final Landing landing;
    private final FleetExport exports;
    private final Customers customers;
    private final Visitor visitor;

    OnboardingPages(Landing landing, FleetExport exports, Customers customers, Visitor visitor) {
        this.landing = landing;
        this.exports = exports;
        this.customers = customers;
        this.visitor = visitor;
    }

    @CheckedTemplate(basePath = "onboarding")
    static class Templates {
        private Templates() {}

        static native TemplateInstance onboarding(Landing.View view);
    }

    @GET
    public TemplateInstance onboarding() {
        return Templates.onboarding(landing.view(visitor, List.of(), false));
    }

    /** A file to fill in. */
    @GET
    @Path("templates/{table}")
    @Produces("text/csv")
    public Response template(@RestPath String table) {
        TransferTable wanted = TransferTable.of(table).orElseThrow(NotFoundException::new);
        return file(exports.template(wanted, true), wanted.word() + "-template");
    }

    /** A table as a file: of one customer, or of all. */
    @GET
    @Path("export")
    @Produces("text/csv")
    public Response export(@RestQuery String table, @RestQuery String customer) {
        TransferTable wanted = TransferTable.of(table == null ? "" : table).orElseThrow(NotFoundException::new);
        Optional<Customer> one =
                customer == null || customer.isBlank() ? Optional.empty() : Optional.of(find(customer));
        Optional<Long> id = one.map(c -> c.id);
        CustomerScope scope = visitor.scope();
        StreamingOutput content = out -> exports.write(scope, id, wanted, true, out);
        return file(content, one.map(c -> plain(c.name) + "-").orElse("") + wanted.word());
    }

    private Customer find(String id) {
        try {
            return customers.find(visitor.scope(), Long.parseLong(id.strip())).orElseThrow(NotFoundException::new);
        } catch (NumberFormatException e) {
            throw new NotFoundException(e);
        }
    }

    private static Response file(Object content, String name) {
        return Response.ok(content)
                .type("text/csv;charset=utf-8;header=present")
                .header("Content-Disposition", "attachment; filename=\"" + name + ".csv\"")
                .build();
    }

    /** A name that every file system takes. */
    private static String plain(String name) {
        String letters = Normalizer.normalize(name, Normalizer.Form.NFD).replaceAll("\\p{M}", "");
        String plain =
                letters.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-").replaceAll("^-|-$", "");
        return plain.isEmpty() ? "customer" : plain;
    }
}
