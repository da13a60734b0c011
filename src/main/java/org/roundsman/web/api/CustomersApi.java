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
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jboss.resteasy.reactive.RestResponse;
import org.roundsman.fleet.Customer;
import org.roundsman.fleet.Customers;
import org.roundsman.fleet.FleetHold;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;

/** Customers. */
@Path("/api/v1")
@Produces(MediaType.APPLICATION_JSON)
@Authenticated
@Needs(TokenScope.READ)
@Tag(name = "Customers")
class CustomersApi {

    private final Customers customers;
    private final FleetHold hold;
    private final Caller caller;
    private final Tagged tagged;

    CustomersApi(Customers customers, FleetHold hold, Caller caller, Tagged tagged) {
        this.customers = customers;
        this.hold = hold;
        this.caller = caller;
        this.tagged = tagged;
    }

    @GET
    @Path("customers")
    @Operation(summary = "Lists customers")
    public RestResponse<Listing<CustomerJson>> listCustomers(
            UriInfo address, @BeanParam Paging paging, @RestQuery String search) {
        Stream<CustomerJson> all = customers.all(caller.scope()).stream()
                .filter(customer -> Given.fits(search, customer.name, customer.note))
                .map(CustomerJson::of);
        return Listing.of(address, paging, paging.cut(all, CustomerJson::id), one -> String.valueOf(one.id()));
    }

    @POST
    @Path("customers")
    @Consumes(MediaType.APPLICATION_JSON)
    @RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
    @Needs(TokenScope.CHANGE)
    @Operation(summary = "Adds a customer")
    public RestResponse<CustomerJson> addCustomer(CustomerJson.Entry entry) {
        caller.requireEveryone();
        Customer made = find(customers.add(entry.draft()).id);
        return tagged.created("/api/v1/customers/" + made.id, CustomerJson.of(made), CustomerJson.Entry.of(made));
    }

    @GET
    @Path("customers/{customer}")
    @Operation(summary = "Shows a customer")
    public RestResponse<CustomerJson> showCustomer(@RestPath long customer) {
        return answer(customer);
    }

    @PATCH
    @Path("customers/{customer}")
    @Consumes({MergePatch.MEDIA_TYPE, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
    @Needs(TokenScope.CHANGE)
    @Operation(summary = "Changes a customer")
    public RestResponse<CustomerJson> changeCustomer(
            @RestPath long customer,
            @RequestBody(content = @Content(schema = @Schema(implementation = CustomerJson.Entry.class)))
                    MergePatch changes) {
        hold.during(FleetHold.Thing.CUSTOMER, customer, () -> {
            CustomerJson.Entry now = CustomerJson.Entry.of(find(customer));
            tagged.requireUnchanged(now);
            customers.change(customer, changes.onto(now).draft());
        });
        return answer(customer);
    }

    private RestResponse<CustomerJson> answer(long id) {
        Customer customer = find(id);
        return tagged.ok(CustomerJson.of(customer), CustomerJson.Entry.of(customer));
    }

    private Customer find(long id) {
        return customers.find(caller.scope(), id).orElseThrow(NotFoundException::new);
    }
}
