package org.roundsman.web.api;

import io.quarkus.security.Authenticated;
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
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jboss.resteasy.reactive.RestResponse;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;
import org.roundsman.planned.PlannedBoard;
import org.roundsman.planned.PlannedWindow;
import org.roundsman.planned.Planning;

/** Planned work. */
@Path("/api/v1/planned-work")
@Produces(MediaType.APPLICATION_JSON)
@Authenticated
@Needs(TokenScope.READ)
@Tag(name = "Planned work")
class PlannedWorkApi {

    private final PlannedBoard board;
    private final Planning planning;
    private final Caller caller;
    private final Clock clock;

    PlannedWorkApi(PlannedBoard board, Planning planning, Caller caller, Clock clock) {
        this.board = board;
        this.planning = planning;
        this.caller = caller;
        this.clock = clock;
    }

    @GET
    @Operation(summary = "Lists planned work, what is over included")
    public RestResponse<Listing<PlannedWorkJson>> listPlannedWork(
            UriInfo address,
            @BeanParam Paging paging,
            @RestQuery
                    @Parameter(
                            description = "Only what reaches that site or a device there",
                            schema = @Schema(type = SchemaType.INTEGER, format = "int64"))
                    String site,
            @RestQuery
                    @Parameter(
                            description = "Only what is not over",
                            schema = @Schema(type = SchemaType.BOOLEAN, defaultValue = "false"))
                    boolean open) {
        Instant now = clock.instant();
        Long only = Given.number("site", site);
        List<PlannedWorkJson> found = open
                ? paging.cut(
                        board.unfinished(caller.scope(), only).stream().map(one -> PlannedWorkJson.of(one, now)),
                        PlannedWorkJson::id)
                : board.after(caller.scope(), only, paging.afterId(), paging.size() + 1).stream()
                        .map(one -> PlannedWorkJson.of(one, now))
                        .toList();
        return Listing.of(address, paging, found, one -> String.valueOf(one.id()));
    }

    @POST
    @Consumes(MediaType.APPLICATION_JSON)
    @RolesAllowed({Role.TECHNICIAN_ROLE, Role.OWNER_ROLE})
    @Needs(TokenScope.CHANGE)
    @Operation(summary = "Plans work, or starts it now")
    public RestResponse<PlannedWorkJson> addPlannedWork(PlannedWorkJson.Entry entry) {
        Instant now = clock.instant().truncatedTo(ChronoUnit.SECONDS);
        PlannedWindow made = planning.add(caller.scope(), entry.draft(now));
        return RestResponse.ResponseBuilder.<PlannedWorkJson>create(RestResponse.Status.CREATED)
                .location(URI.create("/api/v1/planned-work/" + made.id()))
                .entity(PlannedWorkJson.of(made, clock.instant()))
                .build();
    }

    @GET
    @Path("{work}")
    @Operation(summary = "Shows planned work")
    public PlannedWorkJson showPlannedWork(@RestPath long work) {
        return planning.find(caller.scope(), work)
                .map(one -> PlannedWorkJson.of(one, clock.instant()))
                .orElseThrow(NotFoundException::new);
    }

    @POST
    @Path("{work}/end")
    @RolesAllowed({Role.TECHNICIAN_ROLE, Role.OWNER_ROLE})
    @Needs(TokenScope.CHANGE)
    @Operation(summary = "Ends now what goes on; what repeats comes again")
    public PlannedWorkJson endPlannedWork(@RestPath long work) {
        return PlannedWorkJson.of(planning.end(caller.scope(), work), clock.instant());
    }

    @POST
    @Path("{work}/cancel")
    @RolesAllowed({Role.TECHNICIAN_ROLE, Role.OWNER_ROLE})
    @Needs(TokenScope.CHANGE)
    @Operation(summary = "Cancels all that is to come; what has been stays")
    public PlannedWorkJson cancelPlannedWork(@RestPath long work) {
        return PlannedWorkJson.of(planning.cancel(caller.scope(), work), clock.instant());
    }
}
