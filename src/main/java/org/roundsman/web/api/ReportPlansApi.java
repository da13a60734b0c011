package org.roundsman.web.api;

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
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestResponse;
import org.roundsman.dispatch.PlanDraft;
import org.roundsman.dispatch.ReportPlan;
import org.roundsman.dispatch.ReportPlans;
import org.roundsman.fleet.Customers;
import org.roundsman.fleet.InputRejected;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;

/** When and how customers' reports are made. Not for tokens that are narrowed to one customer. */
@Path("/api/v1")
@Produces(MediaType.APPLICATION_JSON)
@RolesAllowed({Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
@Needs(TokenScope.READ)
@Tag(name = "Reports")
class ReportPlansApi {

    private final ReportPlans plans;
    private final Customers customers;
    private final Caller caller;
    private final Tagged tagged;

    ReportPlansApi(ReportPlans plans, Customers customers, Caller caller, Tagged tagged) {
        this.plans = plans;
        this.customers = customers;
        this.caller = caller;
        this.tagged = tagged;
    }

    @GET
    @Path("reports/plans")
    @Operation(summary = "Lists the plan of every customer with a site")
    public RestResponse<Listing<ReportPlanJson>> listReportPlans(UriInfo address, @BeanParam Paging paging) {
        caller.requireEveryone();
        List<ReportPlanJson> found =
                paging.cut(plans.all().stream().map(ReportPlanJson::of), ReportPlanJson::customerId);
        return Listing.of(address, paging, found, one -> String.valueOf(one.customerId()));
    }

    @GET
    @Path("reports/plans/{customer}")
    @Operation(summary = "Shows the plan of a customer")
    public RestResponse<ReportPlanJson> showReportPlan(@RestPath long customer) {
        require(customer);
        return answer(plans.of(customer));
    }

    @PATCH
    @Path("reports/plans/{customer}")
    @Consumes({MergePatch.MEDIA_TYPE, MediaType.APPLICATION_JSON})
    @Needs(TokenScope.CHANGE)
    @Operation(summary = "Changes the plan of a customer")
    public RestResponse<ReportPlanJson> changeReportPlan(
            @RestPath long customer,
            @RequestBody(content = @Content(schema = @Schema(implementation = ReportPlanJson.Entry.class)))
                    MergePatch changes) {
        require(customer);
        ReportPlanJson.Entry now = ReportPlanJson.Entry.of(plans.of(customer));
        tagged.requireUnchanged(now);
        return answer(save(customer, changes.onto(now).draft()));
    }

    private ReportPlan save(long customer, PlanDraft draft) {
        try {
            return plans.save(customer, draft);
        } catch (InputRejected e) {
            throw new InputRejected(named(e.faults()));
        }
    }

    /** The API calls the clock of a plan as it calls that of a site. */
    private static Map<String, String> named(Map<String, String> faults) {
        Map<String, String> named = new LinkedHashMap<>();
        faults.forEach((field, fault) -> named.put(field.equals("zone") ? "timeZone" : field, fault));
        return named;
    }

    private RestResponse<ReportPlanJson> answer(ReportPlan plan) {
        return tagged.ok(ReportPlanJson.of(plan), ReportPlanJson.Entry.of(plan));
    }

    private void require(long customer) {
        caller.requireEveryone();
        customers.find(caller.scope(), customer).orElseThrow(NotFoundException::new);
    }
}
