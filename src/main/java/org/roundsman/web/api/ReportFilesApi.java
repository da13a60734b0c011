package org.roundsman.web.api;

import io.quarkus.security.Authenticated;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.roundsman.dispatch.ReportShelf;
import org.roundsman.people.TokenScope;
import org.roundsman.reports.Report;
import org.roundsman.reports.ReportDocument;
import org.roundsman.reports.ReportLook;
import org.roundsman.reports.ReportTable;
import org.roundsman.reports.ReportTables;

/** Reports as files. Of a report that was sent they are the same octets for ever. */
@Path("/api/v1")
@Authenticated
@Needs(TokenScope.READ)
@Tag(name = "Reports")
class ReportFilesApi {

    private static final String PDF = "application/pdf";

    /** What a table begins with, by which spreadsheets know UTF-8. Programs are told by the type. */
    private static final String MARK = "\uFEFF";

    private final ReportShelf shelf;
    private final ReportDocument document;
    private final Caller caller;

    ReportFilesApi(ReportShelf shelf, ReportDocument document, Caller caller) {
        this.shelf = shelf;
        this.document = document;
        this.caller = caller;
    }

    /** As stored, so that its SHA-256 is the one that the report names. */
    @GET
    @Path("reports/{report}/figures")
    @Produces(MediaType.APPLICATION_JSON)
    @Operation(summary = "Gives everything that a report says, as JSON")
    @APIResponse(
            responseCode = "200",
            description = "OK",
            content =
                    @Content(
                            mediaType = MediaType.APPLICATION_JSON,
                            schema = @Schema(type = SchemaType.OBJECT, description = "The values of the report")))
    public Response showReportFigures(@RestPath long report) {
        byte[] json = shelf.json(caller.scope(), report).orElseThrow(NotFoundException::new);
        return Response.ok(json).type(MediaType.APPLICATION_JSON).build();
    }

    /** As it was sent; before that as it would be. */
    @GET
    @Path("reports/{report}/pdf")
    @Produces(PDF)
    @Operation(summary = "Gives a report as PDF")
    @APIResponse(
            responseCode = "200",
            description = "OK",
            content = @Content(mediaType = PDF, schema = @Schema(type = SchemaType.STRING, format = "binary")))
    public Response showReportDocument(@RestPath long report) {
        String name = name(report);
        byte[] pdf = shelf.pdf(caller.scope(), report).orElseThrow(NotFoundException::new);
        return Response.ok(pdf)
                .type(PDF)
                .header(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"" + name + "\"")
                .build();
    }

    @GET
    @Path("reports/{report}/tables/{table}/csv")
    @Produces(ExportsApi.CSV)
    @Operation(summary = "Gives a table of a report as CSV in UTF-8")
    @APIResponse(
            responseCode = "200",
            description = "OK",
            content =
                    @Content(
                            mediaType = ExportsApi.CSV,
                            schema = @Schema(type = SchemaType.STRING, examples = "site,accessPoints\r\nPier,4\r\n")))
    public Response exportReportTable(@RestPath long report, @RestPath String table) {
        ReportTable found = ReportTables.find(figures(report), table).orElseThrow(NotFoundException::new);
        String name = name(report).replaceFirst("\\.pdf$", "") + "-" + found.key() + ".csv";
        return Response.ok(ReportTables.csv(found).substring(MARK.length()))
                .type(ExportsApi.CSV + ";charset=utf-8;header=present")
                .header(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"" + name + "\"")
                .build();
    }

    private Report figures(long report) {
        return shelf.figures(caller.scope(), report).orElseThrow(NotFoundException::new);
    }

    private String name(long report) {
        ReportLook look = shelf.look(caller.scope(), report).orElseThrow(NotFoundException::new);
        return document.fileName(figures(report), look);
    }
}
