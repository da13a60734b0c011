package org.roundsman.web.api;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.PATCH;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.UriInfo;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestResponse;
import org.roundsman.catalogue.FirmwareLine;
import org.roundsman.catalogue.FirmwareLineDraft;
import org.roundsman.catalogue.FirmwareLines;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;

/** Families of firmware, and how their versions are compared. */
@Path("/api/v1/firmware-lines")
@Produces(MediaType.APPLICATION_JSON)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
@Needs(TokenScope.READ)
@Tag(name = "Models")
class FirmwareLinesApi {

    private final FirmwareLines lines;
    private final Caller caller;
    private final Tagged tagged;

    FirmwareLinesApi(FirmwareLines lines, Caller caller, Tagged tagged) {
        this.lines = lines;
        this.caller = caller;
        this.tagged = tagged;
    }

    /** A family of firmware. */
    @Schema(name = "FirmwareLine")
    record LineJson(
            @Schema(examples = "1") long id,

            @Schema(description = "What was entered about it")
            LineEntry entered) {

        static LineJson of(FirmwareLine line) {
            return new LineJson(line.id, LineEntry.of(line));
        }
    }

    /** A family of firmware as entered. */
    @Schema(name = "FirmwareLineEntry")
    record LineEntry(
            @Schema(required = true, maxLength = 120, examples = "TR access points")
            String name,

            @Schema(required = true, description = "dotted, semantic or pattern", examples = "semantic")
            String scheme,

            @Schema(
                    maxLength = 200,
                    description = "With pattern only: a regular expression that fits the whole version; its groups are"
                            + " compared in turn",
                    examples = "v(\\d+)\\.(\\d+)")
            String pattern,

            @Schema(maxLength = 2000) String note)
            implements ApiBody {

        static LineEntry of(FirmwareLine line) {
            return new LineEntry(line.name, Choice.word(line.scheme), line.pattern, line.note);
        }

        FirmwareLineDraft draft() {
            return new FirmwareLineDraft(
                    Given.text(name).strip(),
                    Choice.of(FirmwareLine.Scheme.class, scheme),
                    Given.text(pattern).strip(),
                    Given.text(note).strip());
        }
    }

    @GET
    @Operation(summary = "Lists firmware lines")
    public RestResponse<Listing<LineJson>> listFirmwareLines(UriInfo address, @BeanParam Paging paging) {
        Stream<LineJson> all = lines.all().stream().map(LineJson::of);
        return Listing.of(address, paging, paging.cut(all, LineJson::id), one -> String.valueOf(one.id()));
    }

    @POST
    @Consumes(MediaType.APPLICATION_JSON)
    @RolesAllowed({Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
    @Needs(TokenScope.CHANGE)
    @Operation(summary = "Adds a firmware line")
    public RestResponse<LineJson> addFirmwareLine(LineEntry entry) {
        caller.requireEveryone();
        FirmwareLine made = lines.add(entry.draft());
        return tagged.created("/api/v1/firmware-lines/" + made.id, LineJson.of(made), LineEntry.of(made));
    }

    @GET
    @Path("{line}")
    @Operation(summary = "Shows a firmware line")
    public RestResponse<LineJson> showFirmwareLine(@RestPath long line) {
        return answer(lines.find(line).orElseThrow(NotFoundException::new));
    }

    @PATCH
    @Path("{line}")
    @Consumes({MergePatch.MEDIA_TYPE, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
    @Needs(TokenScope.CHANGE)
    @Operation(summary = "Changes a firmware line")
    public RestResponse<LineJson> changeFirmwareLine(
            @RestPath long line,
            @RequestBody(content = @Content(schema = @Schema(implementation = LineEntry.class))) MergePatch changes) {
        caller.requireEveryone();
        return answer(lines.change(line, before -> {
            LineEntry now = LineEntry.of(before);
            tagged.requireUnchanged(now);
            return changes.onto(now).draft();
        }));
    }

    @DELETE
    @Path("{line}")
    @RolesAllowed({Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
    @Needs(TokenScope.CHANGE)
    @Operation(summary = "Removes a firmware line that no model takes")
    public void removeFirmwareLine(@RestPath long line) {
        caller.requireEveryone();
        lines.remove(line, now -> tagged.requireUnchanged(LineEntry.of(now)));
    }

    private RestResponse<LineJson> answer(FirmwareLine line) {
        return tagged.ok(LineJson.of(line), LineEntry.of(line));
    }
}
