package org.roundsman.web.api;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.Customers;
import org.roundsman.fleet.FleetExport;
import org.roundsman.fleet.TransferTable;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;

/** The tables as CSV, in the form that {@link ImportsApi} takes. */
@Path("/api/v1/exports")
@Produces(ExportsApi.CSV)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
@Needs(TokenScope.READ)
@Tag(name = "Import and export")
class ExportsApi {

    /** RFC 4180. */
    static final String CSV = "text/csv";

    private final FleetExport exports;
    private final Customers customers;
    private final Caller caller;

    ExportsApi(FleetExport exports, Customers customers, Caller caller) {
        this.exports = exports;
        this.customers = customers;
        this.caller = caller;
    }

    /** A token that is narrowed to one customer gets that customer's rows only. */
    @GET
    @Path("{table}")
    @Operation(summary = "Writes a table as CSV in UTF-8, as an import takes it")
    @APIResponse(
            responseCode = "200",
            description = "OK",
            content =
                    @Content(
                            mediaType = CSV,
                            schema =
                                    @Schema(
                                            type = SchemaType.STRING,
                                            examples = "customer,note\r\nPebblegate Dental,Invented example\r\n")))
    public Response exportTable(
            @RestPath
                    @Parameter(
                            description = "customers, sites, models, devices or purchases",
                            schema = @Schema(type = SchemaType.STRING, examples = "devices"))
                    String table,
            @RestQuery
                    @Parameter(
                            description = "Only rows of that customer; of models, those of its devices",
                            schema = @Schema(type = SchemaType.INTEGER, format = "int64"))
                    String customer) {
        TransferTable wanted = TransferTable.of(table).orElseThrow(NotFoundException::new);
        CustomerScope scope = caller.scope();
        Optional<Long> of = Optional.ofNullable(Given.number("customer", customer));
        // Once the first octet is out, nothing can be refused any more.
        of.ifPresent(id -> customers.find(scope, id).orElseThrow(NotFoundException::new));
        StreamingOutput content = out -> exports.write(scope, of, wanted, false, out);
        return Response.ok(content)
                .type(CSV + ";charset=utf-8;header=present")
                .header("Content-Disposition", "attachment; filename=\"" + wanted.word() + ".csv\"")
                .build();
    }
}
