package org.roundsman.web.reports;

import io.quarkus.security.Authenticated;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import org.jboss.resteasy.reactive.RestPath;
import org.roundsman.dispatch.ReportShelf;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.reports.Report;
import org.roundsman.reports.ReportDocument;
import org.roundsman.reports.ReportLook;
import org.roundsman.reports.ReportTable;
import org.roundsman.reports.ReportTables;
import org.roundsman.web.page.Visitor;

/** A report as files: the document, its figures, and its tables. */
@Path("/")
@Authenticated
class ReportFiles {

    private static final String PDF = "application/pdf";
    private static final String CSV = "text/csv";

    private final ReportShelf shelf;
    private final ReportDocument document;
    private final Visitor visitor;

    ReportFiles(ReportShelf shelf, ReportDocument document, Visitor visitor) {
        this.shelf = shelf;
        this.document = document;
        this.visitor = visitor;
    }

    /** The PDF as it was sent; before that as it would be. */
    @GET
    @Path("reports/{id}/pdf")
    @Produces(PDF)
    public Response pdf(@RestPath long id) {
        Report report = figures(id);
        byte[] pdf = shelf.pdf(scope(), id).orElseThrow(NotFoundException::new);
        return file(pdf, PDF, name(id, report) + ".pdf");
    }

    @GET
    @Path("reports/{id}/json")
    @Produces(MediaType.APPLICATION_JSON)
    public Response json(@RestPath long id) {
        Report report = figures(id);
        byte[] json = shelf.json(scope(), id).orElseThrow(NotFoundException::new);
        return file(json, MediaType.APPLICATION_JSON, name(id, report) + ".json");
    }

    @GET
    @Path("reports/{id}/tables/{key}.csv")
    @Produces(CSV)
    public Response table(@RestPath long id, @RestPath String key) {
        Report report = figures(id);
        ReportTable table = ReportTables.find(report, key).orElseThrow(NotFoundException::new);
        return file(ReportTables.csv(table), CSV + ";charset=utf-8", name(id, report) + "-" + table.key() + ".csv");
    }

    private Report figures(long id) {
        return shelf.figures(scope(), id).orElseThrow(NotFoundException::new);
    }

    /** The name of the document without its ending. */
    private String name(long id, Report report) {
        ReportLook look = shelf.look(scope(), id).orElseThrow(NotFoundException::new);
        return document.fileName(report, look).replaceFirst("\\.pdf$", "");
    }

    private CustomerScope scope() {
        return visitor.scope();
    }

    private static Response file(Object content, String type, String name) {
        return Response.ok(content)
                .type(type)
                .header(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"" + name + "\"")
                .build();
    }
}
