package org.roundsman.web.api;

import io.quarkus.security.Authenticated;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestResponse;
import org.roundsman.dispatch.ReportShelf;
import org.roundsman.people.TokenScope;
import org.roundsman.reports.Report;
import org.roundsman.reports.ReportTable;
import org.roundsman.reports.ReportTables;

/**
 * Reports and what they say. A customer's own people, and a token that is narrowed to one customer, see those of the customer
 * that were sent.
 */
@Path("/api/v1")
@Produces(MediaType.APPLICATION_JSON)
@Authenticated
@Needs(TokenScope.READ)
@Tag(name = "Reports")
class ReportsApi {

    private final ReportShelf shelf;
    private final Caller caller;

    ReportsApi(ReportShelf shelf, Caller caller) {
        this.shelf = shelf;
        this.caller = caller;
    }

    @GET
    @Path("reports")
    @Operation(summary = "Lists reports with all their revisions")
    public RestResponse<Listing<KeptReportJson>> listReports(
            UriInfo address, @BeanParam Paging paging, @BeanParam ReportFilter wanted) {
        List<KeptReportJson> found =
                shelf.after(caller.scope(), wanted.search(), paging.afterId(), paging.size() + 1).stream()
                        .map(KeptReportJson::of)
                        .toList();
        return Listing.of(address, paging, found, one -> String.valueOf(one.id()));
    }

    @GET
    @Path("reports/{report}")
    @Operation(summary = "Shows a report")
    public KeptReportJson showReport(@RestPath long report) {
        return shelf.find(caller.scope(), report).map(KeptReportJson::of).orElseThrow(NotFoundException::new);
    }

    @GET
    @Path("reports/{report}/revisions")
    @Operation(summary = "Lists all revisions of the report of these days")
    public RestResponse<Listing<KeptReportJson>> listReportRevisions(
            UriInfo address, @BeanParam Paging paging, @RestPath long report) {
        showReport(report);
        List<KeptReportJson> found = paging.cut(
                shelf.revisions(caller.scope(), report).stream().map(KeptReportJson::of), KeptReportJson::id);
        return Listing.of(address, paging, found, one -> String.valueOf(one.id()));
    }

    /** A report has few tables: they come in one piece. */
    @GET
    @Path("reports/{report}/tables")
    @Operation(summary = "Lists the tables of a report, all in one piece")
    public Listing<ReportTableJson.Named> listReportTables(@RestPath long report) {
        return new Listing<>(
                ReportTables.of(figures(report)).stream()
                        .map(ReportTableJson.Named::of)
                        .toList(),
                null);
    }

    @GET
    @Path("reports/{report}/tables/{table}")
    @Operation(summary = "Shows a table of a report")
    public ReportTableJson showReportTable(@RestPath long report, @RestPath String table) {
        ReportTable found = ReportTables.find(figures(report), table).orElseThrow(NotFoundException::new);
        return ReportTableJson.of(found);
    }

    private Report figures(long report) {
        return shelf.figures(caller.scope(), report).orElseThrow(NotFoundException::new);
    }
}
