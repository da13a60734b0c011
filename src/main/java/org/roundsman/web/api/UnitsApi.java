package org.roundsman.web.api;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.UriInfo;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestResponse;
import org.roundsman.claims.ReplacementDraft;
import org.roundsman.claims.Replacements;
import org.roundsman.claims.Stay;
import org.roundsman.claims.Units;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;
import org.roundsman.web.claims.AskAgain;

/** Which units stood where, and putting another one there. For the firm's own people. */
@Path("/api/v1")
@Produces(MediaType.APPLICATION_JSON)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
@Needs(TokenScope.READ)
@Tag(name = "Claims and spares")
class UnitsApi {

    private final Units units;
    private final Replacements replacements;
    private final AskAgain again;
    private final Caller caller;

    UnitsApi(Units units, Replacements replacements, AskAgain again, Caller caller) {
        this.units = units;
        this.replacements = replacements;
        this.again = again;
        this.caller = caller;
    }

    /** A time in which one unit stood in a place. */
    @Schema(name = "UnitStay")
    record StayJson(
            @Schema(examples = "51") long id,
            @Schema(examples = "341") long unitId,
            @Schema(examples = "TR22-000417") String serial,
            @Schema(examples = "Tamarack Radio TR-22") String model,
            @Schema(examples = "2026-03-04T12:00:00Z") Instant from,

            @Schema(nullable = true, description = "Null while it stands there")
            Instant until,

            @Schema(
                    description = "read (the device said so), entered (a person said so, of a device that tells"
                            + " none), announced (the device has not said so yet) or confirmed",
                    examples = "read")
            String standing,

            @Schema(nullable = true, description = "The serial number that the device says against the announced one")
            String contradictedBy) {

        static StayJson of(Stay stay) {
            return new StayJson(
                    stay.id(),
                    stay.unitId(),
                    stay.serial(),
                    stay.model(),
                    stay.from(),
                    stay.until().orElse(null),
                    Choice.word(stay.standing()),
                    stay.instead().isEmpty() ? null : stay.instead());
        }
    }

    /** Another unit for a place: a spare, or a serial number. */
    @Schema(name = "ReplacementEntry")
    record Entry(
            @Schema(nullable = true, examples = "5") Long spare,

            @Schema(nullable = true, examples = "TR22-000900")
            String serial,

            @Schema(
                    nullable = true,
                    description = "With a serial number; the same model as before where left out",
                    examples = "2")
            Long modelId,

            @Schema(
                    nullable = true,
                    description = "Since when it is there; now where left out",
                    examples = "2026-03-04T12:00:00Z")
            Instant at,

            @Schema(
                    description = "What becomes of the unit before: sent-back, scrapped or spare",
                    examples = "sent-back")
            String old,

            @Schema(nullable = true, description = "Where it lies, as a spare", examples = "3")
            Long storeRoomId,

            @Schema(nullable = true, description = "Where it lies, as a spare", examples = "21")
            Long siteId,

            @Schema(nullable = true, examples = "Swapped before opening hours")
            String note,

            @Schema(nullable = true, description = "The claim from which this is done", examples = "12")
            Long claim)
            implements ApiBody {

        ReplacementDraft draft(long device) {
            ReplacementDraft.Old fate = Arrays.stream(ReplacementDraft.Old.values())
                    .filter(one -> Choice.word(one).equals(old))
                    .findFirst()
                    .orElse(null);
            return new ReplacementDraft(
                    device, spare, Given.text(serial), modelId, at, fate, storeRoomId, siteId, Given.text(note), claim);
        }
    }

    @GET
    @Path("devices/{device}/units")
    @Operation(summary = "Lists the units that stood in the place of a device")
    public RestResponse<Listing<StayJson>> listUnitStays(
            UriInfo address, @BeanParam Paging paging, @RestPath long device) {
        units.device(caller.scope(), device).orElseThrow(NotFoundException::new);
        List<StayJson> found =
                paging.cut(units.past(caller.scope(), device).stream().map(StayJson::of), StayJson::id);
        return Listing.of(address, paging, found, one -> String.valueOf(one.id()));
    }

    @POST
    @Path("devices/{device}/replacement")
    @Consumes(MediaType.APPLICATION_JSON)
    @Needs(TokenScope.CHANGE)
    @Operation(summary = "Puts another unit in the place of a device, and asks the device at once")
    public StayJson replaceUnit(@RestPath long device, Entry entry) {
        Stay stay = replacements.announce(caller.scope(), entry.draft(device));
        again.ask(device);
        return StayJson.of(stay);
    }
}
