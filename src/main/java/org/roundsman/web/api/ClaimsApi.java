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
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jboss.resteasy.reactive.RestResponse;
import org.roundsman.claims.Claim;
import org.roundsman.claims.ClaimBook;
import org.roundsman.claims.ClaimState;
import org.roundsman.claims.Claims;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;

/** Claims under warranty. For the firm's own people. */
@Path("/api/v1/claims")
@Produces(MediaType.APPLICATION_JSON)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
@Needs(TokenScope.READ)
@Tag(name = "Claims and spares")
class ClaimsApi {

    private final ClaimBook book;
    private final Claims claims;
    private final Caller caller;

    ClaimsApi(ClaimBook book, Claims claims, Caller caller) {
        this.book = book;
        this.claims = claims;
        this.caller = caller;
    }

    @GET
    @Operation(summary = "Lists claims, closed ones included")
    public RestResponse<Listing<ClaimJson>> listClaims(
            UriInfo address,
            @BeanParam Paging paging,
            @RestQuery
                    @Parameter(
                            description = "Only those in that state",
                            schema = @Schema(type = SchemaType.STRING, examples = "sent"))
                    String state) {
        Optional<ClaimState> wanted = Choice.filter(ClaimState.class, "state", state);
        List<ClaimJson> found = book.after(caller.scope(), wanted, paging.afterId(), paging.size() + 1).stream()
                .map(ClaimJson::of)
                .toList();
        return Listing.of(address, paging, found, one -> String.valueOf(one.id()));
    }

    @POST
    @Consumes(MediaType.APPLICATION_JSON)
    @Needs(TokenScope.CHANGE)
    @Operation(summary = "Opens a claim for a unit")
    public RestResponse<ClaimJson> addClaim(ClaimJson.Entry entry) {
        Claim made = claims.open(caller.scope(), entry.draft());
        return RestResponse.ResponseBuilder.<ClaimJson>create(RestResponse.Status.CREATED)
                .location(URI.create("/api/v1/claims/" + made.id()))
                .entity(ClaimJson.of(made))
                .build();
    }

    @GET
    @Path("{claim}")
    @Operation(summary = "Shows a claim")
    public ClaimJson showClaim(@RestPath long claim) {
        return book.find(caller.scope(), claim).map(ClaimJson::of).orElseThrow(NotFoundException::new);
    }

    @GET
    @Path("{claim}/changes")
    @Operation(summary = "Lists what happened to a claim")
    public RestResponse<Listing<ClaimJson.Change>> listClaimChanges(
            UriInfo address, @BeanParam Paging paging, @RestPath long claim) {
        book.find(caller.scope(), claim).orElseThrow(NotFoundException::new);
        List<ClaimJson.Change> found = paging.cut(
                book.changes(caller.scope(), claim).stream().map(ClaimJson.Change::of), ClaimJson.Change::id);
        return Listing.of(address, paging, found, one -> String.valueOf(one.id()));
    }

    @POST
    @Path("{claim}/move")
    @Consumes(MediaType.APPLICATION_JSON)
    @Needs(TokenScope.CHANGE)
    @Operation(summary = "Moves a claim to another state")
    public ClaimJson moveClaim(@RestPath long claim, ClaimJson.Move move) {
        ClaimState to = ClaimState.of(Given.text(move.state())).orElse(null);
        return ClaimJson.of(claims.move(caller.scope(), claim, to, Given.text(move.note())));
    }

    @POST
    @Path("{claim}/paperwork")
    @Consumes(MediaType.APPLICATION_JSON)
    @Needs(TokenScope.CHANGE)
    @Operation(summary = "Enters what passes between us and the maker or supplier")
    public ClaimJson changeClaimPaperwork(@RestPath long claim, ClaimJson.Paperwork paperwork) {
        return ClaimJson.of(claims.papers(caller.scope(), claim, paperwork.papers()));
    }
}
