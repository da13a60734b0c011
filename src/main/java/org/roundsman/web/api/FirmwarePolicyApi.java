package org.roundsman.web.api;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import java.util.function.Supplier;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestResponse;
import org.roundsman.firmware.FirmwarePolicies;
import org.roundsman.firmware.LinePolicy;
import org.roundsman.firmware.PolicyException;
import org.roundsman.firmware.Release;
import org.roundsman.firmware.SecurityMinimum;
import org.roundsman.fleet.InputRejected;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;

/** Shows a line of firmware with what is decided about it, and lets the owner's programs decide. */
@Path("/api/v1/firmware/policy/{line}")
@Produces(MediaType.APPLICATION_JSON)
@RolesAllowed(Role.OWNER_ROLE)
@Needs(TokenScope.CHANGE)
@Tag(name = "Firmware")
class FirmwarePolicyApi {

    /** What the policy calls fields, and how the bodies of the API call the same. */
    private static final Map<String, String> NAMES =
            Map.of("stand", "decision", "model", "modelId", "customer", "customerId", "site", "siteId");

    private final FirmwarePolicies policies;
    private final Caller caller;
    private final Tagged tagged;

    FirmwarePolicyApi(FirmwarePolicies policies, Caller caller, Tagged tagged) {
        this.policies = policies;
        this.caller = caller;
        this.tagged = tagged;
    }

    private static String address(long line) {
        return "/api/v1/firmware/policy/" + line;
    }

    /** Only who sees everybody may decide for everybody. */
    private LinePolicy line(long line) {
        caller.requireEveryone();
        return policies.find(line).orElseThrow(NotFoundException::new);
    }

    private static <T> T one(List<T> all, Predicate<T> wanted) {
        return all.stream().filter(wanted).findFirst().orElseThrow(NotFoundException::new);
    }

    /** Saves, and names what is refused as the body does. */
    private static <T> T named(Supplier<T> save) {
        try {
            return save.get();
        } catch (InputRejected e) {
            Map<String, String> named = new LinkedHashMap<>();
            e.faults().forEach((field, fault) -> named.put(NAMES.getOrDefault(field, field), fault));
            throw new InputRejected(named);
        }
    }

    @GET
    @RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
    @Needs(TokenScope.READ)
    @Operation(summary = "Shows what is decided about a line of firmware")
    public FirmwareJson.Policy showFirmwarePolicy(@RestPath long line) {
        return policies.find(line)
                .map(one -> FirmwareJson.Policy.of(one, caller.scope()))
                .orElseThrow(NotFoundException::new);
    }

    @POST
    @Path("releases")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(summary = "Decides about a release; one that was recommended before becomes an accepted one")
    public RestResponse<FirmwareJson.ReleaseJson> addFirmwareRelease(
            @RestPath long line, FirmwareJson.ReleaseEntry entry) {
        line(line);
        Release made = named(() -> policies.save(line, entry.draft()));
        return tagged.created(address(line), FirmwareJson.ReleaseJson.of(made), FirmwareJson.ReleaseEntry.of(made));
    }

    @DELETE
    @Path("releases/{release}")
    @Operation(summary = "Takes back what was decided about a release")
    public RestResponse<Void> removeFirmwareRelease(@RestPath long line, @RestPath long release) {
        Release found = one(line(line).releases(), candidate -> candidate.id() == release);
        tagged.requireUnchanged(FirmwareJson.ReleaseEntry.of(found));
        policies.removeRelease(line, release);
        return RestResponse.noContent();
    }

    @POST
    @Path("minimums")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(summary = "Sets the oldest version that has a security fix")
    public RestResponse<FirmwareJson.MinimumJson> addFirmwareMinimum(
            @RestPath long line, FirmwareJson.MinimumEntry entry) {
        line(line);
        SecurityMinimum made = named(() -> policies.save(line, entry.draft()));
        return tagged.created(address(line), FirmwareJson.MinimumJson.of(made), FirmwareJson.MinimumEntry.of(made));
    }

    @DELETE
    @Path("minimums/{minimum}")
    @Operation(summary = "Removes such a minimum")
    public RestResponse<Void> removeFirmwareMinimum(@RestPath long line, @RestPath long minimum) {
        SecurityMinimum found = one(line(line).minimums(), candidate -> candidate.id() == minimum);
        tagged.requireUnchanged(FirmwareJson.MinimumEntry.of(found));
        policies.removeMinimum(line, minimum);
        return RestResponse.noContent();
    }

    @POST
    @Path("pilots")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(summary = "Lets a site run the pilot release first")
    public RestResponse<FirmwareJson.PilotEntry> addFirmwarePilot(@RestPath long line, FirmwareJson.PilotEntry entry) {
        line(line);
        return named(() -> {
            policies.addPilot(line, Given.or(entry.siteId(), 0L));
            return tagged.created(address(line), entry, entry);
        });
    }

    @DELETE
    @Path("pilots/{pilot}")
    @Operation(summary = "Lets a site run what all run; named by the id of the site")
    public RestResponse<Void> removeFirmwarePilot(@RestPath long line, @RestPath long pilot) {
        one(line(line).pilots(), candidate -> candidate.siteId() == pilot);
        tagged.requireUnchanged(new FirmwareJson.PilotEntry(pilot));
        policies.removePilot(line, pilot);
        return RestResponse.noContent();
    }

    @POST
    @Path("exceptions")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(summary = "Lets a customer's devices run something else until a day")
    public RestResponse<FirmwareJson.ExceptionJson> addFirmwareException(
            @RestPath long line, FirmwareJson.ExceptionEntry entry) {
        line(line);
        PolicyException made = named(() -> policies.except(line, entry.draft()));
        return tagged.created(address(line), FirmwareJson.ExceptionJson.of(made), FirmwareJson.ExceptionEntry.of(made));
    }

    @DELETE
    @Path("exceptions/{exception}")
    @Operation(summary = "Takes an exception back: the policy holds again at once")
    public RestResponse<Void> removeFirmwareException(@RestPath long line, @RestPath long exception) {
        PolicyException found = one(line(line).exceptions(), candidate -> candidate.id() == exception);
        tagged.requireUnchanged(FirmwareJson.ExceptionEntry.of(found));
        policies.removeException(line, exception);
        return RestResponse.noContent();
    }
}
