package org.roundsman.web.api;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.net.URI;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestResponse;
import org.roundsman.discovery.Sweeps;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;

/** Sweeps of a site: the latest one, started and stopped. */
@Path("/api/v1/sites/{site}/sweeps")
@Produces(MediaType.APPLICATION_JSON)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
@Needs(TokenScope.VISIT)
@Tag(name = "Sweeps")
class SweepsApi {

    private final Sweeps sweeps;
    private final Caller caller;

    SweepsApi(Sweeps sweeps, Caller caller) {
        this.sweeps = sweeps;
        this.caller = caller;
    }

    @POST
    @Operation(
            summary = "Starts a sweep of what is entered for the site",
            description = "What an earlier sweep found and nobody adopted is forgotten.")
    public RestResponse<SweepJson> addSweep(@RestPath long site) {
        sweeps.start(caller.scope(), site);
        return RestResponse.ResponseBuilder.<SweepJson>create(RestResponse.Status.CREATED)
                .location(URI.create("/api/v1/sites/" + site + "/sweeps/latest"))
                .entity(showLatestSweep(site))
                .build();
    }

    @GET
    @Path("latest")
    @Needs(TokenScope.READ)
    @Operation(summary = "Shows how far the latest sweep of a site is")
    public SweepJson showLatestSweep(@RestPath long site) {
        return sweeps.progress(caller.scope(), site).map(SweepJson::of).orElseThrow(NotFoundException::new);
    }

    @POST
    @Path("latest/cancel")
    @Operation(summary = "Cancels the latest sweep if it is running; what it found stays")
    public SweepJson cancelLatestSweep(@RestPath long site) {
        sweeps.cancel(caller.scope(), site);
        return showLatestSweep(site);
    }

    @POST
    @Path("latest/resume")
    @Operation(summary = "Goes on with the latest sweep if it was cancelled")
    public SweepJson resumeLatestSweep(@RestPath long site) {
        sweeps.resume(caller.scope(), site);
        return showLatestSweep(site);
    }
}
