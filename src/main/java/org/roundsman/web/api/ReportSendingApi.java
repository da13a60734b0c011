package org.roundsman.web.api;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.UriInfo;
import java.net.URI;
import java.util.List;
import java.util.Map;
import java.util.stream.LongStream;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestResponse;
import org.roundsman.dispatch.ReportLinks;
import org.roundsman.dispatch.ReportMails;
import org.roundsman.dispatch.ReportShelf;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;

/** Mails of reports and links to them. Not for tokens that are narrowed to one customer. */
@Path("/api/v1")
@Produces(MediaType.APPLICATION_JSON)
@RolesAllowed({Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
@Needs(TokenScope.CHANGE)
@Tag(name = "Reports")
class ReportSendingApi {

    private final ReportShelf shelf;
    private final ReportMails mails;
    private final ReportLinks links;
    private final Caller caller;

    ReportSendingApi(ReportShelf shelf, ReportMails mails, ReportLinks links, Caller caller) {
        this.shelf = shelf;
        this.mails = mails;
        this.links = links;
        this.caller = caller;
    }

    @GET
    @Path("reports/{report}/mails")
    @RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
    @Needs(TokenScope.READ)
    @Operation(summary = "Lists the mails of a report")
    public RestResponse<Listing<ReportSendingJson.Mail>> listReportMails(
            UriInfo address, @BeanParam Paging paging, @RestPath long report) {
        require(report);
        List<ReportSendingJson.Mail> found =
                paging.cut(mails.of(report).stream().map(ReportSendingJson.Mail::of), ReportSendingJson.Mail::id);
        return Listing.of(address, paging, found, one -> String.valueOf(one.id()));
    }

    @POST
    @Path("reports/{report}/mails/{mail}/bounced")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(summary = "Notes that a mail came back")
    public void returnReportMail(@RestPath long report, @RestPath long mail, ReportEntries.Bounce entry) {
        require(report);
        require(mails.of(report).stream().mapToLong(ReportMails.Line::id), mail);
        mails.bounced(mail, Given.text(entry.why()));
    }

    @GET
    @Path("reports/{report}/links")
    @Needs(TokenScope.READ)
    @Operation(summary = "Lists the links to a report, without what opens it")
    public RestResponse<Listing<ReportSendingJson.Link>> listReportLinks(
            UriInfo address, @BeanParam Paging paging, @RestPath long report) {
        require(report);
        List<ReportSendingJson.Link> found =
                paging.cut(links.of(report).stream().map(ReportSendingJson.Link::of), ReportSendingJson.Link::id);
        return Listing.of(address, paging, found, one -> String.valueOf(one.id()));
    }

    @POST
    @Path("reports/{report}/links")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(summary = "Makes a link that opens a report without a sign-in; it is given out this once")
    public RestResponse<ReportSendingJson.Made> addReportLink(@RestPath long report, ReportEntries.LinkEntry entry) {
        require(report);
        if (entry.days() == null) {
            throw new ProblemException(Problem.refused(Map.of("days", "must be given")));
        }
        ReportLinks.Fresh fresh = links.make(report, entry.days());
        return RestResponse.ResponseBuilder.<ReportSendingJson.Made>create(RestResponse.Status.CREATED)
                .location(URI.create("/api/v1/reports/" + report + "/links"))
                .entity(ReportSendingJson.Made.of(fresh))
                .build();
    }

    @POST
    @Path("reports/{report}/links/{link}/revoke")
    @Operation(summary = "Takes a link back for good")
    public void revokeReportLink(@RestPath long report, @RestPath long link) {
        require(report);
        require(links.of(report).stream().mapToLong(ReportLinks.Link::id), link);
        links.revoke(link);
    }

    private void require(long report) {
        caller.requireEveryone();
        shelf.find(caller.scope(), report).orElseThrow(NotFoundException::new);
    }

    private static void require(LongStream ids, long wanted) {
        if (ids.noneMatch(id -> id == wanted)) {
            throw new NotFoundException();
        }
    }
}
