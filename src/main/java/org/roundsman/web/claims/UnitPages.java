package org.roundsman.web.claims;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.OptionalDouble;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.roundsman.claims.Claim;
import org.roundsman.claims.Fate;
import org.roundsman.claims.Spare;
import org.roundsman.claims.Stay;
import org.roundsman.claims.UnitPast;
import org.roundsman.claims.Units;
import org.roundsman.people.Role;
import org.roundsman.web.page.Visitor;
import org.roundsman.web.page.Words;

/** One unit, with its own past wherever it stood. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class UnitPages {

    private final Units units;
    private final Visitor visitor;
    private final Clock clock;

    UnitPages(Units units, Visitor visitor, Clock clock) {
        this.units = units;
        this.visitor = visitor;
        this.clock = clock;
    }

    /**
     * A stay in words.
     *
     * @param deviceId 0 where the place left the fleet
     * @param said what the device says against it, or empty
     */
    record StayLine(
            long deviceId,
            String device,
            String site,
            String from,
            String until,
            String lasted,
            String standing,
            String said,
            String available,
            String restarts,
            String alarms) {}

    /** Where it lay in store, in words. */
    record LayLine(String where, String since, String left, String why) {}

    /** What the page shows. */
    record Shown(
            UnitPast past,
            long ownerId,
            String known,
            List<StayLine> stays,
            List<LayLine> lay,
            List<ClaimWords.Line> claims,
            boolean claimable) {}

    @CheckedTemplate(basePath = "claims")
    static class Templates {
        private Templates() {}

        static native TemplateInstance unit(Shown shown);
    }

    @GET
    @Path("units/{id}")
    public TemplateInstance unit(@RestPath long id) {
        UnitPast past = units.whole(visitor.scope(), id).orElseThrow(NotFoundException::new);
        Instant now = clock.instant();
        boolean claimable = past.unit().owner().isPresent()
                && past.unit().fate().filter(fate -> fate == Fate.SCRAPPED).isEmpty()
                && past.claims().stream().noneMatch(Claim::unfinished);
        return Templates.unit(new Shown(
                past,
                ClaimWords.orZero(past.unit().owner()),
                Words.moment(past.unit().knownSince(), ZoneOffset.UTC) + " UTC",
                past.stays().stream().map(stood -> line(stood, now)).toList(),
                past.lay().stream().map(UnitPages::line).toList(),
                past.claims().stream().map(claim -> ClaimWords.line(claim, now)).toList(),
                claimable));
    }

    /** By the serial number within a customer. */
    @GET
    @Path("units")
    public Response find(@RestQuery @DefaultValue("0") long customer, @RestQuery @DefaultValue("") String serial) {
        long id = units.find(visitor.scope(), customer, serial)
                .orElseThrow(NotFoundException::new)
                .id();
        return Response.seeOther(URI.create("/units/" + id)).build();
    }

    private static StayLine line(UnitPast.Stood stood, Instant now) {
        Stay stay = stood.stay();
        return new StayLine(
                ClaimWords.orZero(stay.deviceId()),
                stay.device(),
                stay.site(),
                moment(stay.from(), stay),
                stay.until().map(at -> moment(at, stay)).orElse("now"),
                Words.length(
                        java.time.Duration.between(stay.from(), stay.until().orElse(now))),
                stay.standing().word(),
                stay.instead(),
                stood.read().map(read -> share(read.availability().share())).orElse(Words.NOT_AVAILABLE),
                stood.read().map(read -> Words.count(read.restarts())).orElse(Words.NOT_AVAILABLE),
                stood.read().map(read -> Words.count(read.alarms())).orElse(Words.NOT_AVAILABLE));
    }

    private static String moment(Instant at, Stay stay) {
        return Words.second(at, stay.zone()).replaceFirst(":\\d\\d$", "");
    }

    /** Never up: what was silent for a second was not there all the time. */
    static String share(OptionalDouble share) {
        return share.isEmpty()
                ? Words.NOT_AVAILABLE
                : Words.figure(Math.floor(share.getAsDouble() * 10_000) / 100, 2, "%");
    }

    private static LayLine line(Spare spare) {
        return new LayLine(
                spare.where(),
                Words.moment(spare.since(), ZoneOffset.UTC) + " UTC",
                spare.leftAt()
                        .map(at -> Words.moment(at, ZoneOffset.UTC) + " UTC")
                        .orElse(""),
                spare.leftWhy());
    }
}
