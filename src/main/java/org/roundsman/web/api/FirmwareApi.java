package org.roundsman.web.api;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.UriInfo;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestQuery;
import org.jboss.resteasy.reactive.RestResponse;
import org.roundsman.firmware.FirmwarePolicies;
import org.roundsman.firmware.FirmwareStates;
import org.roundsman.firmware.FirmwareStatus;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;

/** What devices run, and what is decided about it. */
@Path("/api/v1/firmware")
@Produces(MediaType.APPLICATION_JSON)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
@Needs(TokenScope.READ)
@Tag(name = "Firmware")
class FirmwareApi {

    private final FirmwareStates states;
    private final FirmwarePolicies policies;
    private final Caller caller;

    FirmwareApi(FirmwareStates states, FirmwarePolicies policies, Caller caller) {
        this.states = states;
        this.policies = policies;
        this.caller = caller;
    }

    @GET
    @Path("devices")
    @Operation(summary = "Lists devices with their firmware and how it stands against the policy")
    public RestResponse<Listing<FirmwareJson.OfDevice>> listFirmware(
            UriInfo address,
            @BeanParam Paging paging,
            @RestQuery
                    @Parameter(
                            description =
                                    "Only with that status: current, behind, withdrawn, ahead-of-policy, excepted, not-known")
                    String status,
            @RestQuery
                    @Parameter(
                            description = "Only of that customer",
                            schema = @Schema(type = SchemaType.INTEGER, format = "int64"))
                    String customer) {
        Optional<FirmwareStatus> wanted = Choice.filter(FirmwareStatus.class, "status", status);
        Long only = Given.number("customer", customer);
        var found = states.all(caller.scope()).stream()
                .filter(state -> wanted.map(one -> one == state.status()).orElse(true))
                .filter(state -> only == null || only == state.place().customerId())
                .map(FirmwareJson.OfDevice::of);
        return Listing.of(
                address,
                paging,
                paging.cut(found, FirmwareJson.OfDevice::deviceId),
                one -> String.valueOf(one.deviceId()));
    }

    @GET
    @Path("policy")
    @Operation(summary = "Lists what is decided about each line of firmware")
    public RestResponse<Listing<FirmwareJson.Policy>> listFirmwarePolicies(UriInfo address, @BeanParam Paging paging) {
        var all = policies.all().stream().map(line -> FirmwareJson.Policy.of(line, caller.scope()));
        return Listing.of(
                address, paging, paging.cut(all, FirmwareJson.Policy::lineId), one -> String.valueOf(one.lineId()));
    }
}
