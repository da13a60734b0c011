package org.roundsman.web.reports;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.file.Files;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.multipart.FileUpload;
import org.roundsman.dispatch.BrandDraft;
import org.roundsman.dispatch.Brands;
import org.roundsman.fleet.Customer;
import org.roundsman.fleet.Customers;
import org.roundsman.fleet.InputRejected;
import org.roundsman.people.Role;
import org.roundsman.reports.ReportLook;
import org.roundsman.web.page.Faults;
import org.roundsman.web.page.Visitor;

/** How the firm and its customers are presented on reports: name, colour, logo, and whom to ask. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class LookPages {

    private static final String FIRM = "/reports/look";

    /** Octets of the largest logo. */
    private static final long LARGEST = 256 * 1024;

    private final Brands brands;
    private final Customers customers;
    private final Visitor visitor;

    LookPages(Brands brands, Customers customers, Visitor visitor) {
        this.brands = brands;
        this.customers = customers;
        this.visitor = visitor;
    }

    /**
     * One look.
     *
     * @param who whose it is
     * @param logo the one that is there, as an address of its own octets, or empty
     * @param others looks of customers, beside the firm's
     */
    record Shown(String who, String action, LookForm form, String logo, List<Customer> others, Faults faults) {}

    @CheckedTemplate(basePath = "reports")
    static class Templates {
        private Templates() {}

        static native TemplateInstance look(Shown shown);
    }

    @GET
    @Path("reports/look")
    public TemplateInstance firm() {
        return Templates.look(firm(LookForm.of(brands.firm()), Faults.NONE));
    }

    @GET
    @Path("reports/look/{customer}")
    public TemplateInstance one(@RestPath long customer) {
        Customer of = find(customer);
        return Templates.look(one(of, LookForm.of(brands.of(customer)), Faults.NONE));
    }

    @POST
    @Path("reports/look")
    @Consumes({MediaType.MULTIPART_FORM_DATA, MediaType.APPLICATION_FORM_URLENCODED})
    public Response saveFirm(@BeanParam LookForm form, @RestForm FileUpload logo) {
        return save(form, logo, brands::saveFirm, FIRM, faults -> firm(form, faults));
    }

    @POST
    @Path("reports/look/{customer}")
    @Consumes({MediaType.MULTIPART_FORM_DATA, MediaType.APPLICATION_FORM_URLENCODED})
    public Response saveOne(@RestPath long customer, @BeanParam LookForm form, @RestForm FileUpload logo) {
        Customer of = find(customer);
        String here = FIRM + "/" + customer;
        return save(form, logo, draft -> brands.save(customer, draft), here, faults -> one(of, form, faults));
    }

    private static Response save(
            LookForm form, FileUpload logo, Consumer<BrandDraft> keep, String then, Function<Faults, Shown> again) {
        try {
            keep.accept(form.draft(content(logo)));
            return Response.seeOther(URI.create(then)).build();
        } catch (InputRejected e) {
            return Response.status(422)
                    .entity(Templates.look(again.apply(new Faults(e.faults()))))
                    .build();
        }
    }

    /** A field in which nothing was chosen is passed over; what is too large is not read. */
    private static Optional<byte[]> content(FileUpload file) {
        if (file == null || file.size() == 0 && file.fileName().isBlank()) {
            return Optional.empty();
        }
        if (file.size() > LARGEST) {
            throw new InputRejected(Map.of("logo", "this file is larger than 256 KB, which is the most"));
        }
        try {
            return Optional.of(Files.readAllBytes(file.uploadedFile()));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private Shown firm(LookForm form, Faults faults) {
        return new Shown("The firm", FIRM, form, picture(brands.firm()), customers.all(visitor.scope()), faults);
    }

    private Shown one(Customer of, LookForm form, Faults faults) {
        return new Shown(of.name, FIRM + "/" + of.id, form, picture(brands.of(of.id)), List.of(), faults);
    }

    private static String picture(ReportLook.Brand brand) {
        return brand.logo().length == 0
                ? ""
                : "data:" + brand.logoType() + ";base64," + Base64.getEncoder().encodeToString(brand.logo());
    }

    private Customer find(long customer) {
        return customers.find(visitor.scope(), customer).orElseThrow(NotFoundException::new);
    }
}
