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
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestResponse;
import org.roundsman.claims.Spare;
import org.roundsman.claims.Spares;
import org.roundsman.claims.StoreRooms;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;

/** What lies in store. For the firm's own people. */
@Path("/api/v1")
@Produces(MediaType.APPLICATION_JSON)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
@Needs(TokenScope.READ)
@Tag(name = "Claims and spares")
class SparesApi {

    private final Spares spares;
    private final StoreRooms rooms;
    private final Caller caller;

    SparesApi(Spares spares, StoreRooms rooms, Caller caller) {
        this.spares = spares;
        this.rooms = rooms;
        this.caller = caller;
    }

    @GET
    @Path("store-rooms")
    @Operation(summary = "Lists the store rooms")
    public RestResponse<Listing<SpareJson.Room>> listStoreRooms(UriInfo address, @BeanParam Paging paging) {
        List<SpareJson.Room> found =
                paging.cut(rooms.all(caller.scope()).stream().map(SpareJson.Room::of), SpareJson.Room::id);
        return Listing.of(address, paging, found, one -> String.valueOf(one.id()));
    }

    @GET
    @Path("spares")
    @Operation(summary = "Lists what lies in store")
    public RestResponse<Listing<SpareJson>> listSpares(UriInfo address, @BeanParam Paging paging) {
        List<SpareJson> found = spares.after(caller.scope(), paging.afterId(), paging.size() + 1).stream()
                .map(SpareJson::of)
                .toList();
        return Listing.of(address, paging, found, one -> String.valueOf(one.id()));
    }

    @POST
    @Path("spares")
    @Consumes(MediaType.APPLICATION_JSON)
    @Needs(TokenScope.CHANGE)
    @Operation(summary = "Puts a unit into store")
    public RestResponse<SpareJson> addSpare(SpareJson.Entry entry) {
        Spare made = spares.add(caller.scope(), entry.draft());
        return RestResponse.ResponseBuilder.<SpareJson>create(RestResponse.Status.CREATED)
                .location(URI.create("/api/v1/spares/" + made.id()))
                .entity(SpareJson.of(made))
                .build();
    }

    @GET
    @Path("spares/{spare}")
    @Operation(summary = "Shows a spare")
    public SpareJson showSpare(@RestPath long spare) {
        return spares.find(caller.scope(), spare)
                .filter(one -> one.leftAt().isEmpty())
                .map(SpareJson::of)
                .orElseThrow(NotFoundException::new);
    }

    /** The spare has another id where it lies then. */
    @POST
    @Path("spares/{spare}/move")
    @Consumes(MediaType.APPLICATION_JSON)
    @Needs(TokenScope.CHANGE)
    @Operation(summary = "Moves a spare to another room or site, where it has another id")
    public SpareJson moveSpare(@RestPath long spare, SpareJson.Move move) {
        return SpareJson.of(spares.move(caller.scope(), spare, move.storeRoomId(), move.siteId()));
    }

    @POST
    @Path("spares/{spare}/leave")
    @Consumes(MediaType.APPLICATION_JSON)
    @Needs(TokenScope.CHANGE)
    @Operation(summary = "Takes a spare out of store for good")
    public RestResponse<Void> takeSpareAway(@RestPath long spare, SpareJson.Leaves leaves) {
        spares.takeAway(caller.scope(), spare, leaves.becomes(), Given.text(leaves.why()));
        return RestResponse.noContent();
    }
}
