package org.roundsman.web.api;

import io.quarkus.security.Authenticated;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.Consumes;
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
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jboss.resteasy.reactive.RestResponse;
import org.roundsman.fleet.Customers;
import org.roundsman.fleet.FleetHold;
import org.roundsman.fleet.Site;
import org.roundsman.fleet.Sites;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;

/** Sites. */
@Path("/api/v1")
@Produces(MediaType.APPLICATION_JSON)
@Authenticated
@Needs(TokenScope.READ)
@Tag(name = "Sites")
class SitesApi {

    private final Customers customers;
    private final Sites sites;
    private final FleetHold hold;
    private final Caller caller;
    private final Tagged tagged;

    SitesApi(Customers customers, Sites sites, FleetHold hold, Caller caller, Tagged tagged) {
        this.customers = customers;
        this.sites = sites;
        this.hold = hold;
        this.caller = caller;
        this.tagged = tagged;
    }

    @GET
    @Path("sites")
    @Operation(summary = "Lists sites")
    public RestResponse<Listing<SiteJson.Line>> listSites(
            UriInfo address,
            @BeanParam Paging paging,
            @RestQuery
                    @Parameter(
                            description = "Only sites of that customer",
                            schema = @Schema(type = SchemaType.INTEGER, format = "int64"))
                    String customer,
            @RestQuery String search) {
        Stream<SiteJson.Line> all = sites.all(caller.scope(), Given.number("customer", customer)).stream()
                .filter(site ->
                        Given.fits(search, site.name, site.customer.name, site.street, site.postcode, site.town))
                .map(SiteJson.Line::of);
        return Listing.of(address, paging, paging.cut(all, SiteJson.Line::id), one -> String.valueOf(one.id()));
    }

    @POST
    @Path("customers/{customer}/sites")
    @Consumes(MediaType.APPLICATION_JSON)
    @RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
    @Needs(TokenScope.CHANGE)
    @Operation(summary = "Adds a site of a customer")
    public RestResponse<SiteJson> addSite(@RestPath long customer, SiteJson.Entry entry) {
        customers.find(caller.scope(), customer).orElseThrow(NotFoundException::new);
        Site made = find(sites.add(customer, entry.draft()).id);
        return tagged.created("/api/v1/sites/" + made.id, SiteJson.of(made), SiteJson.Entry.of(made));
    }

    @GET
    @Path("sites/{site}")
    @Operation(summary = "Shows a site")
    public RestResponse<SiteJson> showSite(@RestPath long site) {
        return answer(site);
    }

    @PATCH
    @Path("sites/{site}")
    @Consumes({MergePatch.MEDIA_TYPE, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
    @Needs(TokenScope.CHANGE)
    @Operation(summary = "Changes a site")
    public RestResponse<SiteJson> changeSite(
            @RestPath long site,
            @RequestBody(content = @Content(schema = @Schema(implementation = SiteJson.Entry.class)))
                    MergePatch changes) {
        hold.during(FleetHold.Thing.SITE, site, () -> {
            SiteJson.Entry now = SiteJson.Entry.of(find(site));
            tagged.requireUnchanged(now);
            sites.change(site, changes.onto(now).draft());
        });
        return answer(site);
    }

    private RestResponse<SiteJson> answer(long id) {
        Site site = find(id);
        return tagged.ok(SiteJson.of(site), SiteJson.Entry.of(site));
    }

    private Site find(long id) {
        return sites.find(caller.scope(), id).orElseThrow(NotFoundException::new);
    }
}
