package org.roundsman.web.claims;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.time.Clock;
import java.util.List;
import org.jboss.resteasy.reactive.RestPath;
import org.roundsman.claims.Claim;
import org.roundsman.claims.ClaimBook;
import org.roundsman.claims.Units;
import org.roundsman.fleet.Device;
import org.roundsman.paper.Paper;
import org.roundsman.people.Role;
import org.roundsman.visits.Cautions;
import org.roundsman.web.page.Visitor;
import org.roundsman.web.page.Words;

/** The sheet that goes along with a unit, as a page and to print. No prices stand on it. */
@Path("/")
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class ClaimSheets {

    private final ClaimBook book;
    private final Units units;
    private final Paper paper;
    private final Visitor visitor;
    private final Clock clock;

    ClaimSheets(ClaimBook book, Units units, Paper paper, Visitor visitor, Clock clock) {
        this.book = book;
        this.units = units;
        this.paper = paper;
        this.visitor = visitor;
        this.clock = clock;
    }

    /**
     * What the sheet shows.
     *
     * @param mac of the unit, or empty
     * @param cautions what can hurt whoever takes the unit down
     */
    record Sheet(Claim claim, String mac, String made, String opened, List<String> cautions) {}

    @CheckedTemplate(basePath = "claims")
    static class Templates {
        private Templates() {}

        static native TemplateInstance sheet(Sheet sheet);

        static native TemplateInstance paper(Sheet sheet, String style);
    }

    @GET
    @Path("claims/{id}/sheet")
    @Produces(MediaType.TEXT_HTML)
    public TemplateInstance page(@RestPath long id) {
        return Templates.sheet(sheet(id));
    }

    @GET
    @Path("claims/{id}/sheet.pdf")
    @Produces("application/pdf")
    public Response pdf(@RestPath long id) {
        byte[] pdf =
                paper.pdf(Templates.paper(sheet(id), paper.style("sheet.css")).render());
        return Response.ok(pdf)
                .header("Content-Disposition", "inline; filename=\"claim-" + id + ".pdf\"")
                .build();
    }

    private Sheet sheet(long id) {
        Claim claim = book.find(visitor.scope(), id).orElseThrow(NotFoundException::new);
        String mac = units.find(visitor.scope(), claim.unitId())
                .map(unit -> unit.mac())
                .orElse("");
        List<Device> place = claim.deviceId().isPresent()
                ? units.device(visitor.scope(), claim.deviceId().getAsLong()).stream()
                        .toList()
                : List.of();
        return new Sheet(
                claim,
                mac,
                Words.second(clock.instant(), claim.known().zone()),
                Words.moment(claim.openedAt(), claim.known().zone()),
                Cautions.of(List.of(), place));
    }
}
