package org.roundsman.web.api;

import io.quarkus.security.Authenticated;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.PATCH;
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
import org.roundsman.fleet.FleetHold;
import org.roundsman.fleet.Network;
import org.roundsman.fleet.Networks;
import org.roundsman.fleet.Sites;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;

/** The networks of sites. Devices say which SSIDs there are; people say what each is for. */
@Path("/api/v1/sites/{site}/networks")
@Produces(MediaType.APPLICATION_JSON)
@Authenticated
@Needs(TokenScope.READ)
@Tag(name = "Sites")
class NetworksApi {

    private final Sites sites;
    private final Networks networks;
    private final FleetHold hold;
    private final Caller caller;
    private final Tagged tagged;

    NetworksApi(Sites sites, Networks networks, FleetHold hold, Caller caller, Tagged tagged) {
        this.sites = sites;
        this.networks = networks;
        this.hold = hold;
        this.caller = caller;
        this.tagged = tagged;
    }

    /** One SSID. */
    @Schema(name = "Network")
    record NetworkJson(
            @Schema(examples = "3") long id,
            @Schema(examples = "Pebblegate-Guest") String ssid,
            @Schema(examples = "guest") String purpose) {}

    /** What can be said of it. */
    @Schema(name = "NetworkEntry")
    record Entry(
            @Schema(description = "staff, guest or other", examples = "guest")
            String purpose) implements ApiBody {}

    @GET
    @Operation(summary = "Lists the networks of a site")
    public RestResponse<Listing<NetworkJson>> listNetworks(
            UriInfo address, @BeanParam Paging paging, @RestPath long site) {
        Stream<NetworkJson> all = ofSite(site).map(NetworksApi::json);
        return Listing.of(address, paging, paging.cut(all, NetworkJson::id), one -> String.valueOf(one.id()));
    }

    @GET
    @Path("{network}")
    @Operation(summary = "Shows a network of a site")
    public RestResponse<NetworkJson> showNetwork(@RestPath long site, @RestPath long network) {
        Network found = find(site, network);
        return tagged.ok(json(found), new Entry(found.purpose));
    }

    @PATCH
    @Path("{network}")
    @Consumes({MergePatch.MEDIA_TYPE, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
    @Needs(TokenScope.CHANGE)
    @Operation(summary = "Says what a network is for")
    public RestResponse<NetworkJson> changeNetwork(
            @RestPath long site,
            @RestPath long network,
            @RequestBody(content = @Content(schema = @Schema(implementation = Entry.class))) MergePatch changes) {
        hold.during(FleetHold.Thing.SITE, site, () -> {
            Network found = find(site, network);
            Entry now = new Entry(found.purpose);
            tagged.requireUnchanged(now);
            networks.setPurpose(site, found.ssid, Given.text(changes.onto(now).purpose()));
        });
        return showNetwork(site, network);
    }

    private static NetworkJson json(Network network) {
        return new NetworkJson(network.id, network.ssid, network.purpose);
    }

    private Stream<Network> ofSite(long site) {
        sites.find(caller.scope(), site).orElseThrow(NotFoundException::new);
        return networks.ofSite(site).stream();
    }

    private Network find(long site, long id) {
        return ofSite(site).filter(network -> network.id == id).findFirst().orElseThrow(NotFoundException::new);
    }
}
