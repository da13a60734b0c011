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
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestResponse;
import org.roundsman.discovery.Adopted;
import org.roundsman.discovery.Adoption;
import org.roundsman.discovery.FoundDevice;
import org.roundsman.discovery.Review;
import org.roundsman.discovery.Reviews;
import org.roundsman.discovery.SweepReview;
import org.roundsman.fleet.InputRejected;
import org.roundsman.people.Role;
import org.roundsman.people.TokenScope;

/** What the latest sweep of a site found, and taking it up into the fleet. */
@Path("/api/v1/sites/{site}/sweeps/latest")
@Produces(MediaType.APPLICATION_JSON)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
@Needs(TokenScope.READ)
@Tag(name = "Sweeps")
class FindingsApi {

    private final Reviews reviews;
    private final Adoption adoption;
    private final Caller caller;

    FindingsApi(Reviews reviews, Adoption adoption, Caller caller) {
        this.reviews = reviews;
        this.adoption = adoption;
        this.caller = caller;
    }

    /** What an adoption did. */
    @Schema(name = "Adopted")
    record AdoptedJson(
            @Schema(description = "New devices", examples = "3")
            int added,

            @Schema(description = "Devices that got another address", examples = "1")
            int readdressed,

            @Schema(description = "Devices that came from another site", examples = "0")
            int moved) {}

    @GET
    @Path("findings")
    @Operation(summary = "Lists what the latest sweep of a site found so far; what was set aside is left out")
    public RestResponse<Listing<FindingJson>> listFindings(
            UriInfo address, @BeanParam Paging paging, @RestPath long site) {
        Stream<FindingJson> all = review(site).found().stream().map(FindingJson::of);
        return Listing.of(address, paging, paging.cut(all, FindingJson::id), one -> String.valueOf(one.id()));
    }

    @GET
    @Path("unanswered")
    @Operation(summary = "Lists the devices of a site that its latest sweep did not meet, and why")
    public RestResponse<Listing<FindingJson.Missed>> listUnanswered(
            UriInfo address, @BeanParam Paging paging, @RestPath long site) {
        Stream<FindingJson.Missed> all = review(site).unanswered().stream().map(FindingJson.Missed::of);
        return Listing.of(
                address, paging, paging.cut(all, FindingJson.Missed::deviceId), one -> String.valueOf(one.deviceId()));
    }

    @POST
    @Path("adopt")
    @Consumes(MediaType.APPLICATION_JSON)
    @Needs(TokenScope.CHANGE)
    @Operation(
            summary = "Takes findings up into the fleet: all that are named, or nothing",
            description = "Rounds begin at once. A device with a new address keeps its name, kind, place and past.")
    public AdoptedJson adoptFindings(@RestPath long site, FindingJson.Adopting wanted) {
        Map<Long, Review> proposed =
                review(site).found().stream().collect(Collectors.toMap(FoundDevice::findingId, FoundDevice::entry));
        List<FindingJson.Line> lines = Given.list(wanted.lines());
        List<Review> entries = lines.stream()
                .map(line -> line.onto(
                        proposed.getOrDefault(line.finding(), new Review(line.finding(), false, "", null, ""))))
                .toList();
        try {
            Adopted done = adoption.adopt(caller.scope(), site, entries);
            return new AdoptedJson(done.added(), done.readdressed(), done.moved());
        } catch (InputRejected e) {
            throw new InputRejected(named(e.faults(), lines));
        }
    }

    /** {@code name-880} becomes {@code lines[2].name}, as it stands in the body. */
    private static Map<String, String> named(Map<String, String> faults, List<FindingJson.Line> lines) {
        Map<String, String> named = new LinkedHashMap<>(faults);
        for (int i = 0; i < lines.size(); i++) {
            String end = "-" + lines.get(i).finding();
            for (String field : List.of("name", "kind", "place", "host", "line")) {
                String reason = named.remove(field + end);
                if (reason != null) {
                    named.put("lines[" + i + "]" + (field.equals("line") ? "" : "." + field), reason);
                }
            }
        }
        return named;
    }

    private SweepReview review(long site) {
        return reviews.latest(caller.scope(), site).orElseThrow(NotFoundException::new);
    }
}
