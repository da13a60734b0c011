package org.roundsman.web.api;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.PATCH;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestResponse;
import org.roundsman.dispatch.Brands;
import org.roundsman.fleet.Customers;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;
import org.roundsman.reports.ReportLook;

/** How the firm and its customers are presented on reports, without the logos. Not for tokens narrowed to one customer. */
@Path("/api/v1")
@Produces(MediaType.APPLICATION_JSON)
@RolesAllowed({Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
@Needs(TokenScope.READ)
@Tag(name = "Reports")
class ReportBrandsApi {

    private final Brands brands;
    private final Customers customers;
    private final Caller caller;
    private final Tagged tagged;

    ReportBrandsApi(Brands brands, Customers customers, Caller caller, Tagged tagged) {
        this.brands = brands;
        this.customers = customers;
        this.caller = caller;
        this.tagged = tagged;
    }

    @GET
    @Path("reports/brand")
    @Operation(summary = "Shows how the firm is presented on reports")
    public RestResponse<ReportPlanJson.Brand> showFirmBrand() {
        caller.requireEveryone();
        return answer(brands.firm());
    }

    @PATCH
    @Path("reports/brand")
    @Consumes({MergePatch.MEDIA_TYPE, MediaType.APPLICATION_JSON})
    @Needs(TokenScope.CHANGE)
    @Operation(summary = "Changes how the firm is presented on reports")
    public RestResponse<ReportPlanJson.Brand> changeFirmBrand(
            @RequestBody(content = @Content(schema = @Schema(implementation = ReportPlanJson.BrandEntry.class)))
                    MergePatch changes) {
        caller.requireEveryone();
        ReportPlanJson.BrandEntry now = ReportPlanJson.BrandEntry.of(brands.firm());
        tagged.requireUnchanged(now);
        brands.saveFirm(changes.onto(now).draft());
        return answer(brands.firm());
    }

    @GET
    @Path("reports/brands/{customer}")
    @Operation(summary = "Shows how a customer is presented on its reports")
    public RestResponse<ReportPlanJson.Brand> showCustomerBrand(@RestPath long customer) {
        require(customer);
        return answer(brands.of(customer));
    }

    @PATCH
    @Path("reports/brands/{customer}")
    @Consumes({MergePatch.MEDIA_TYPE, MediaType.APPLICATION_JSON})
    @Needs(TokenScope.CHANGE)
    @Operation(summary = "Changes how a customer is presented on its reports")
    public RestResponse<ReportPlanJson.Brand> changeCustomerBrand(
            @RestPath long customer,
            @RequestBody(content = @Content(schema = @Schema(implementation = ReportPlanJson.BrandEntry.class)))
                    MergePatch changes) {
        require(customer);
        ReportPlanJson.BrandEntry now = ReportPlanJson.BrandEntry.of(brands.of(customer));
        tagged.requireUnchanged(now);
        brands.save(customer, changes.onto(now).draft());
        return answer(brands.of(customer));
    }

    private RestResponse<ReportPlanJson.Brand> answer(ReportLook.Brand brand) {
        return tagged.ok(ReportPlanJson.Brand.of(brand), ReportPlanJson.BrandEntry.of(brand));
    }

    private void require(long customer) {
        caller.requireEveryone();
        customers.find(caller.scope(), customer).orElseThrow(NotFoundException::new);
    }
}
