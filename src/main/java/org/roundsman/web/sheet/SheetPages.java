package org.roundsman.web.sheet;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import org.jboss.resteasy.reactive.RestPath;
import org.roundsman.paper.Paper;
import org.roundsman.people.Role;
import org.roundsman.visits.VisitSheets;
import org.roundsman.web.page.Visitor;

/** The visit sheet of an alarm, as a page and to print. Addresses and contacts are for the firm's own people. */
@Path("/")
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class SheetPages {

    private final VisitSheets sheets;
    private final Paper paper;
    private final Visitor visitor;

    SheetPages(VisitSheets sheets, Paper paper, Visitor visitor) {
        this.sheets = sheets;
        this.paper = paper;
        this.visitor = visitor;
    }

    @CheckedTemplate(basePath = "sheet")
    static class Templates {
        private Templates() {}

        static native TemplateInstance visit(SheetView sheet);

        static native TemplateInstance paper(SheetView sheet, String style);
    }

    @GET
    @Path("triage/visit/{id}")
    @Produces(MediaType.TEXT_HTML)
    public TemplateInstance visit(@RestPath long id) {
        return Templates.visit(sheet(id));
    }

    @GET
    @Path("triage/visit/{id}/sheet.pdf")
    @Produces("application/pdf")
    public Response pdf(@RestPath long id) {
        SheetView sheet = sheet(id);
        byte[] pdf = paper.pdf(Templates.paper(sheet, paper.style("sheet.css")).render());
        return Response.ok(pdf)
                .header("Content-Disposition", "inline; filename=\"visit-" + id + ".pdf\"")
                .build();
    }

    private SheetView sheet(long id) {
        return sheets.of(visitor.scope(), id).map(SheetWords::of).orElseThrow(NotFoundException::new);
    }
}
