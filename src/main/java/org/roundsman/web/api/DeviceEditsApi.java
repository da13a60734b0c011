package org.roundsman.web.api;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.PATCH;
import jakarta.ws.rs.POST;
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
import org.roundsman.fleet.Devices;
import org.roundsman.fleet.FleetHold;
import org.roundsman.fleet.Sites;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;

/** Devices, added, changed and removed. */
@Path("/api/v1")
@Produces(MediaType.APPLICATION_JSON)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
@Needs(TokenScope.CHANGE)
@Tag(name = "Devices")
class DeviceEditsApi {

    private final Sites sites;
    private final Devices devices;
    private final FleetHold hold;
    private final DeviceAnswers answers;
    private final Tagged tagged;

    DeviceEditsApi(Sites sites, Devices devices, FleetHold hold, DeviceAnswers answers, Tagged tagged) {
        this.sites = sites;
        this.devices = devices;
        this.hold = hold;
        this.answers = answers;
        this.tagged = tagged;
    }

    @POST
    @Path("sites/{site}/devices")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(summary = "Adds a device at a site")
    public RestResponse<DeviceJson> addDevice(@RestPath long site, DeviceJson.Entry entry) {
        sites.find(answers.scope(), site).orElseThrow(NotFoundException::new);
        return answers.created(devices.add(site, entry.draft()).id);
    }

    @PATCH
    @Path("devices/{device}")
    @Consumes({MergePatch.MEDIA_TYPE, MediaType.APPLICATION_JSON})
    @Operation(summary = "Changes a device")
    public RestResponse<DeviceJson> changeDevice(
            @RestPath long device,
            @RequestBody(content = @Content(schema = @Schema(implementation = DeviceJson.Entry.class)))
                    MergePatch changes) {
        hold.during(FleetHold.Thing.DEVICE, device, () -> {
            DeviceJson.Entry now = answers.entered(device);
            tagged.requireUnchanged(now);
            devices.change(device, changes.onto(now).draft());
        });
        return answers.ok(device);
    }

    @DELETE
    @Path("devices/{device}")
    @Operation(summary = "Takes a device out of the fleet for good, with its history")
    public void removeDevice(@RestPath long device) {
        hold.during(FleetHold.Thing.DEVICE, device, () -> {
            tagged.requireUnchanged(answers.entered(device));
            devices.remove(device);
        });
    }
}
