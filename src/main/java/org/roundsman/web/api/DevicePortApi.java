package org.roundsman.web.api;

import io.quarkus.security.Authenticated;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.List;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestResponse;
import org.roundsman.fleet.FleetHold;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;
import org.roundsman.topology.PortWord;
import org.roundsman.topology.PortWords;
import org.roundsman.topology.Topology;
import org.roundsman.topology.TreeNode;

/** The switch port of a device: where it hangs, and what people say about that. */
@Path("/api/v1/devices/{device}/port")
@Produces(MediaType.APPLICATION_JSON)
@Authenticated
@Needs(TokenScope.READ)
@Tag(name = "Wiring")
class DevicePortApi {

    private final Topology topology;
    private final PortWords words;
    private final FleetHold hold;
    private final Caller caller;
    private final Tagged tagged;

    DevicePortApi(Topology topology, PortWords words, FleetHold hold, Caller caller, Tagged tagged) {
        this.topology = topology;
        this.words = words;
        this.hold = hold;
        this.caller = caller;
        this.tagged = tagged;
    }

    @GET
    @Operation(summary = "Shows on which port a device hangs, and the way up from there")
    public RestResponse<DevicePortJson> showDevicePort(@RestPath long device) {
        List<TreeNode> path = path(device);
        Optional<PortWord> word = words.of(caller.scope(), device);
        return tagged.ok(DevicePortJson.of(device, path, word), DevicePortJson.Entry.of(word));
    }

    @PUT
    @Consumes(MediaType.APPLICATION_JSON)
    @RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
    @Needs(TokenScope.CHANGE)
    @Operation(summary = "Says on which port a device hangs, whatever is found")
    public RestResponse<DevicePortJson> setDevicePort(@RestPath long device, DevicePortJson.Entry entry) {
        hold.during(FleetHold.Thing.DEVICE, device, () -> {
            requireUnchanged(device);
            words.set(caller.scope(), device, entry.parentId(), entry.port(), Given.text(entry.note()));
        });
        return showDevicePort(device);
    }

    @DELETE
    @RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
    @Needs(TokenScope.CHANGE)
    @Operation(summary = "Takes back what was said about a device's port; what is found decides again")
    public void takeBackDevicePort(@RestPath long device) {
        hold.during(FleetHold.Thing.DEVICE, device, () -> {
            requireUnchanged(device);
            words.takeBack(caller.scope(), device);
        });
    }

    private void requireUnchanged(long device) {
        path(device);
        tagged.requireUnchanged(DevicePortJson.Entry.of(words.of(caller.scope(), device)));
    }

    /** A device of the scope is always on its own way up. */
    private List<TreeNode> path(long device) {
        List<TreeNode> path = topology.pathUp(caller.scope(), device);
        if (path.isEmpty()) {
            throw new NotFoundException();
        }
        return path;
    }
}
