package org.roundsman.web.warranty;

import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.Map;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.multipart.FileUpload;
import org.roundsman.fleet.InputRejected;
import org.roundsman.people.Role;
import org.roundsman.warranty.Evidence;
import org.roundsman.warranty.Evidences;
import org.roundsman.warranty.Purchase;
import org.roundsman.warranty.Warranties;
import org.roundsman.web.page.Faults;
import org.roundsman.web.page.Visitor;

/**
 * The files that prove purchases. They are given out as downloads only, never shown by us: a file from elsewhere may hold
 * more than it says.
 */
@Path("/")
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class EvidencePages {

    private final Evidences evidences;
    private final Warranties warranties;
    private final UnitViews views;
    private final Visitor visitor;

    EvidencePages(Evidences evidences, Warranties warranties, UnitViews views, Visitor visitor) {
        this.evidences = evidences;
        this.warranties = warranties;
        this.views = views;
        this.visitor = visitor;
    }

    @POST
    @Path("warranty/units/purchases/{purchase}/evidence")
    @Consumes({MediaType.MULTIPART_FORM_DATA, MediaType.APPLICATION_FORM_URLENCODED})
    @Produces(MediaType.TEXT_HTML)
    public Response attach(@RestPath long purchase, @RestForm FileUpload file) {
        try {
            evidences.attach(visitor.scope(), purchase, file == null ? "" : file.fileName(), content(file));
            return Response.seeOther(URI.create("/warranty/units/purchases/" + purchase + "#evidence"))
                    .build();
        } catch (InputRejected e) {
            if (e.faults().containsKey("id")) {
                throw new NotFoundException(e);
            }
            return Response.status(422).entity(again(purchase, e)).build();
        }
    }

    private TemplateInstance again(long purchase, InputRejected e) {
        return warranties
                .ofPurchase(visitor.scope(), purchase)
                .map(cover -> UnitPages.Templates.unit(views.of(cover), new Faults(e.faults())))
                .orElseThrow(NotFoundException::new);
    }

    /** What is too large is not read: a byte more than the most says so. */
    private static byte[] content(FileUpload file) {
        if (file == null) {
            return new byte[0];
        }
        if (file.size() > Evidences.LARGEST) {
            throw new InputRejected(Map.of("file", "this file is larger than 5 MB, which is the most"));
        }
        try {
            return Files.readAllBytes(file.uploadedFile());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @GET
    @Path("warranty/evidence/{evidence}")
    @Produces(MediaType.APPLICATION_OCTET_STREAM)
    public Response download(@RestPath long evidence) {
        Evidences.Content found = evidences.read(visitor.scope(), evidence).orElseThrow(NotFoundException::new);
        return Response.ok(found.content())
                .type(found.about().kind().mediaType())
                .header(HttpHeaders.CONTENT_DISPOSITION, attachment(found.about()))
                .build();
    }

    /** RFC 6266: a plain name for old readers, and the whole one in UTF-8 (RFC 8187). */
    private static String attachment(Evidence one) {
        String plain = one.name().replaceAll("[^A-Za-z0-9._ -]", "_");
        String whole = URLEncoder.encode(one.name(), StandardCharsets.UTF_8)
                .replace("+", "%20")
                .replace("*", "%2A");
        return "attachment; filename=\"" + plain + "\"; filename*=UTF-8''" + whole;
    }

    @POST
    @Path("warranty/evidence/{evidence}/remove")
    @Produces(MediaType.TEXT_HTML)
    public Response remove(@RestPath long evidence) {
        Purchase owner = evidences.remove(visitor.scope(), evidence).orElseThrow(NotFoundException::new);
        return Response.seeOther(URI.create("/warranty/units/purchases/" + owner.id() + "#evidence"))
                .build();
    }
}
