package org.roundsman.web.api;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.UriInfo;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestResponse;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;
import org.roundsman.rules.RuleBook;
import org.roundsman.rules.RuleTarget;
import org.roundsman.rules.RuleTargets;

/** The rules as they hold for one device. */
@Path("/api/v1/devices/{device}/rules")
@Produces(MediaType.APPLICATION_JSON)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
@Needs(TokenScope.READ)
@Tag(name = "Rules")
class DeviceRulesApi {

    private final RuleBook book;
    private final RuleTargets targets;
    private final Caller caller;

    DeviceRulesApi(RuleBook book, RuleTargets targets, Caller caller) {
        this.book = book;
        this.targets = targets;
        this.caller = caller;
    }

    @GET
    @Operation(summary = "Lists the values of the rules as they hold for a device, and where each comes from")
    public RestResponse<Listing<RuleJson.OfDevice>> listDeviceRules(
            UriInfo address, @BeanParam Paging paging, @RestPath long device) {
        RuleTarget target = targets.ofDevice(caller.scope(), device).orElseThrow(NotFoundException::new);
        return RulesApi.listing(
                address, paging, rule -> RuleJson.OfDevice.of(rule, book.current(), target), RuleJson.OfDevice::type);
    }
}
