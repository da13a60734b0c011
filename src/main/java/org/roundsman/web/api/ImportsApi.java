package org.roundsman.web.api;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.UriInfo;
import java.net.URI;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jboss.resteasy.reactive.RestResponse;
import org.roundsman.fleet.FleetImport;
import org.roundsman.fleet.ImportFile;
import org.roundsman.fleet.ImportOutcome;
import org.roundsman.fleet.ImportRights;
import org.roundsman.fleet.ImportRow;
import org.roundsman.fleet.ImportRun;
import org.roundsman.fleet.ImportUnreadable;
import org.roundsman.fleet.InputRejected;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;
import org.roundsman.shared.Page;

/**
 * Uploads with their dry runs. They belong to an account and name anybody's data, so that a token which is narrowed to one
 * customer does not open them.
 */
@Path("/api/v1/imports")
@Produces(MediaType.APPLICATION_JSON)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
@Needs(TokenScope.CHANGE)
@Tag(name = "Import and export")
class ImportsApi {

    private final FleetImport imports;
    private final Caller caller;

    ImportsApi(FleetImport imports, Caller caller) {
        this.imports = imports;
        this.caller = caller;
    }

    @GET
    @Needs(TokenScope.READ)
    @Operation(summary = "Lists the person's own imports of the last day, ten at most")
    public RestResponse<Listing<ImportJson>> listImports(UriInfo address, @BeanParam Paging paging) {
        Stream<ImportJson> all = imports.latest(account()).stream().map(ImportJson::of);
        return Listing.of(address, paging, paging.cut(all, ImportJson::id), one -> String.valueOf(one.id()));
    }

    @POST
    @Consumes(ExportsApi.CSV)
    @Operation(
            summary = "Reads a table from CSV and begins its dry run, which writes nothing",
            description =
                    "The header tells which table it is: customers, sites, models, devices or purchases. The body is"
                            + " UTF-8, or as charset=windows-1252 in Content-Type says; 32 MiB at most.")
    public RestResponse<ImportJson> addImport(
            @Context HttpHeaders headers,
            @RestQuery
                    @Parameter(
                            description = "Name of the file, only to be shown",
                            schema = @Schema(type = SchemaType.STRING, examples = "customers.csv"))
                    String name,
            @RequestBody(
                            content =
                                    @Content(
                                            mediaType = ExportsApi.CSV,
                                            schema =
                                                    @Schema(
                                                            type = SchemaType.STRING,
                                                            examples =
                                                                    "customer,note\r\nPebblegate Dental,Invented\r\n")))
                    byte[] csv) {
        long account = account();
        if (csv == null || csv.length == 0) {
            throw new ProblemException(ProblemKind.UNREADABLE, "The body is empty.");
        }
        boolean windows = windows(headers.getMediaType());
        List<ImportFile> files = List.of(new ImportFile(Given.text(name), csv));
        ImportJson made = begun(() -> read(account, files, windows));
        return RestResponse.ResponseBuilder.<ImportJson>create(RestResponse.Status.CREATED)
                .location(URI.create("/api/v1/imports/" + made.id()))
                .entity(made)
                .build();
    }

    /** What the sender says (RFC 7111, section 4), never what we guess. */
    private static boolean windows(MediaType type) {
        String charset = type.getParameters().getOrDefault(MediaType.CHARSET_PARAMETER, "utf-8");
        boolean windows = charset.equalsIgnoreCase("windows-1252");
        if (!windows && !charset.equalsIgnoreCase("utf-8") && !charset.equalsIgnoreCase("us-ascii")) {
            throw new ProblemException(ProblemKind.WRONG_TYPE, "The charset of a table is utf-8 or windows-1252.");
        }
        return windows;
    }

    private ImportRun read(long account, List<ImportFile> files, boolean windows) {
        try {
            return imports.check(rights(), account, files, windows);
        } catch (ImportUnreadable e) {
            ProblemKind kind = ProblemKind.REFUSED;
            List<Problem.FieldError> errors = e.faults().stream()
                    .map(fault -> new Problem.FieldError("", fault.reason()))
                    .toList();
            throw new ProblemException(
                    new Problem(kind.type(), kind.title(), kind.status(), "Nothing was read.", errors));
        }
    }

    @GET
    @Path("{import}")
    @Needs(TokenScope.READ)
    @Operation(summary = "Shows an import: how far it is, and its rows by what they would do")
    public ImportJson showImport(@RestPath("import") long id) {
        return ImportJson.of(imports.find(account(), id).orElseThrow(NotFoundException::new));
    }

    @GET
    @Path("{import}/rows")
    @Needs(TokenScope.READ)
    @Operation(summary = "Lists the rows of an import, in the order in which they are applied")
    public RestResponse<Listing<ImportJson.Row>> listImportRows(
            UriInfo address,
            @RestPath("import") long id,
            @BeanParam Paging paging,
            @RestQuery @Parameter(description = "new, changed, same or refused") String outcome) {
        int number = Math.toIntExact(Math.max(0, Math.min(paging.afterId(), Integer.MAX_VALUE / 1_000))) + 1;
        Optional<ImportOutcome> only = Choice.filter(ImportOutcome.class, "outcome", outcome);
        Page<ImportRow> page = imports.rows(account(), id, only, false, number, paging.size());
        List<ImportJson.Row> rows =
                new ArrayList<>(page.items().stream().map(ImportJson.Row::of).toList());
        if (page.hasNext() && !rows.isEmpty()) {
            rows.add(rows.get(0)); // stands for the one item more by which a list sees that it goes on
        }
        return Listing.of(address, paging, rows, row -> String.valueOf(page.number()));
    }

    @POST
    @Path("{import}/check")
    @Operation(summary = "Makes the dry run once more, since the fleet has changed")
    public ImportJson checkImport(@RestPath("import") long id) {
        return begun(() -> imports.checkAgain(rights(), account(), id));
    }

    @POST
    @Path("{import}/apply")
    @Operation(
            summary = "Begins to write an import: all of it or nothing",
            description = "It ends applied; or checked, with a remark and a new dry run, when a row would now come out"
                    + " differently than in the dry run before, and then nothing was written.")
    public ImportJson applyImport(@RestPath("import") long id) {
        return begun(() -> imports.apply(rights(), account(), id));
    }

    @DELETE
    @Path("{import}")
    @Operation(summary = "Forgets an import; what it has written stays")
    public void removeImport(@RestPath("import") long id) {
        long account = account();
        allowed(() -> {
            imports.discard(account, id);
            return null;
        });
    }

    private static ImportJson begun(Supplier<ImportRun> work) {
        return ImportJson.of(allowed(work));
    }

    /** What stands against the import as a whole is no field of a body. */
    private static <T> T allowed(Supplier<T> work) {
        try {
            return work.get();
        } catch (InputRejected e) {
            String reason = e.faults().get("import");
            if (reason == null) {
                throw e;
            }
            throw new ProblemException(ProblemKind.IN_USE, reason);
        }
    }

    private ImportRights rights() {
        return new ImportRights(caller.scope(), caller.person().role().keepsCatalogue());
    }

    private long account() {
        caller.requireEveryone();
        return caller.person().accountId();
    }
}
