package org.roundsman.web.api;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.Arrays;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestResponse;
import org.roundsman.discovery.SweepPlan;
import org.roundsman.discovery.Sweeps;
import org.roundsman.fleet.FleetHold;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;

/** What sweeps of a site ask. */
@Path("/api/v1/sites/{site}/sweep-plan")
@Produces(MediaType.APPLICATION_JSON)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
@Needs(TokenScope.READ)
@Tag(name = "Sweeps")
class SweepPlanApi {

    private final Sweeps sweeps;
    private final FleetHold hold;
    private final Caller caller;
    private final Tagged tagged;

    SweepPlanApi(Sweeps sweeps, FleetHold hold, Caller caller, Tagged tagged) {
        this.sweeps = sweeps;
        this.hold = hold;
        this.caller = caller;
        this.tagged = tagged;
    }

    /** What is entered. */
    @Schema(name = "SweepPlan")
    record Plan(
            @Schema(
                    description = "Prefixes, first and last address, or single addresses; 4096 addresses at most, each"
                            + " counted once for each port",
                    examples = "[\"192.0.2.0/28\", \"192.0.2.40-192.0.2.60\"]")
            List<String> ranges,

            @Schema(description = "One to four UDP ports; 161 where they are left out", examples = "[161]")
            List<Integer> ports,

            @Schema(
                    nullable = true,
                    description = "Ids of the credentials to try; null for all that are usable at the site",
                    examples = "[5]")
            List<Long> credentials)
            implements ApiBody {

        static Plan of(SweepPlan plan) {
            List<String> entries = Arrays.stream(plan.ranges().split("[,\\r\\n]+"))
                    .map(String::strip)
                    .filter(entry -> !entry.isEmpty())
                    .toList();
            return new Plan(entries, plan.ports(), plan.all() ? null : plan.credentials());
        }

        SweepPlan plan() {
            return new SweepPlan(
                    String.join("\n", Given.list(ranges)),
                    ports == null ? List.of(SweepPlan.PORT) : Given.list(ports),
                    credentials == null,
                    Given.list(credentials));
        }
    }

    @GET
    @Operation(summary = "Shows what sweeps of a site ask")
    public RestResponse<Plan> showSweepPlan(@RestPath long site) {
        Plan plan = Plan.of(sweeps.plan(caller.scope(), site));
        return tagged.ok(plan, plan);
    }

    @PUT
    @Consumes(MediaType.APPLICATION_JSON)
    @Needs(TokenScope.CHANGE)
    @Operation(summary = "Says as a whole what sweeps of a site ask")
    public RestResponse<Plan> replaceSweepPlan(@RestPath long site, Plan plan) {
        hold.during(FleetHold.Thing.SITE, site, () -> {
            tagged.requireUnchanged(Plan.of(sweeps.plan(caller.scope(), site)));
            sweeps.save(caller.scope(), site, plan.plan());
        });
        return showSweepPlan(site);
    }
}
