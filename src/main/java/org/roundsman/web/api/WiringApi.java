package org.roundsman.web.api;

import io.quarkus.security.Authenticated;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;
import org.roundsman.topology.SiteWiring;
import org.roundsman.topology.Topology;
import org.roundsman.topology.WiringReads;

/** What hangs on what at a site. */
@Path("/api/v1/sites/{site}/wiring")
@Produces(MediaType.APPLICATION_JSON)
@Authenticated
@Needs(TokenScope.READ)
@Tag(name = "Wiring")
class WiringApi {

    private final Topology topology;
    private final WiringReads reads;
    private final Caller caller;

    WiringApi(Topology topology, WiringReads reads, Caller caller) {
        this.topology = topology;
        this.reads = reads;
        this.caller = caller;
    }

    /** How a wish to read went. */
    @Schema(name = "WiringWish")
    record Wish(
            @Schema(description = "Devices that are read now, one after the other", examples = "7")
            int asked,

            @Schema(
                    description = "Devices that are silent or not reached yet, and keep what was known of them",
                    examples = "1")
            int silent) {}

    @GET
    @Operation(summary = "Shows the wiring of a site: which device hangs on which port")
    public WiringJson showWiring(@RestPath long site) {
        return WiringJson.of(site, find(site));
    }

    @POST
    @Path("read")
    @RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
    @Needs(TokenScope.VISIT)
    @Operation(summary = "Reads the wiring of a site again as soon as may be")
    public Wish readWiring(@RestPath long site) {
        find(site);
        WiringReads.Wish wish = reads.readNow(site);
        return new Wish(wish.asked(), wish.silent());
    }

    private SiteWiring find(long site) {
        return topology.wiring(caller.scope(), site).orElseThrow(NotFoundException::new);
    }
}
