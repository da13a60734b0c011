package org.roundsman.web.claims;

import jakarta.enterprise.context.RequestScoped;
import jakarta.inject.Named;
import java.util.List;
import org.roundsman.claims.Claim;
import org.roundsman.claims.ClaimBook;
import org.roundsman.claims.Stay;
import org.roundsman.claims.Units;
import org.roundsman.web.page.Visitor;
import org.roundsman.web.page.Words;

/** Which unit stands in a place, on the device's page; templates know it as {@code inject:units}. For the firm's own people. */
@Named("units")
@RequestScoped
public class PlaceLines {

    private final Units units;
    private final ClaimBook claims;
    private final Visitor visitor;

    PlaceLines(Units units, ClaimBook claims, Visitor visitor) {
        this.units = units;
        this.claims = claims;
        this.visitor = visitor;
    }

    /**
     * A unit that stands or stood there.
     *
     * @param until empty while it stands there
     */
    public record Line(long unitId, String serial, String model, String from, String until, String standing) {}

    /** A claim about a unit of the place. */
    public record About(long id, String serial, String state) {}

    /**
     * What is shown of a place.
     *
     * @param shown whether the visitor is shown anything of it
     * @param now at most one
     * @param awaited whether the device has yet to say the announced unit
     * @param instead the serial number that it says against it, or empty
     * @param open whether a claim of the unit that stands there goes on
     */
    public record Shown(
            boolean shown,
            long deviceId,
            List<Line> now,
            List<Line> before,
            boolean awaited,
            String instead,
            List<About> claims,
            boolean open) {}

    /** Of a device; nothing for viewers. */
    public Shown of(long deviceId) {
        if (!visitor.person().role().keepsPurchases()) {
            return new Shown(false, deviceId, List.of(), List.of(), false, "", List.of(), false);
        }
        List<Stay> stays = units.past(visitor.scope(), deviceId);
        List<Stay> now = stays.stream().filter(stay -> stay.until().isEmpty()).toList();
        List<Claim> about = claims.ofDevice(visitor.scope(), deviceId);
        return new Shown(
                true,
                deviceId,
                now.stream().map(PlaceLines::line).toList(),
                stays.stream()
                        .filter(stay -> stay.until().isPresent())
                        .map(PlaceLines::line)
                        .toList(),
                now.stream().anyMatch(Stay::awaited),
                now.stream().map(Stay::instead).findFirst().orElse(""),
                about.stream()
                        .map(claim -> new About(
                                claim.id(),
                                claim.known().serial(),
                                claim.state().word()))
                        .toList(),
                about.stream()
                        .anyMatch(claim ->
                                claim.unfinished() && now.stream().anyMatch(stay -> stay.unitId() == claim.unitId())));
    }

    private static Line line(Stay stay) {
        return new Line(
                stay.unitId(),
                stay.serial(),
                stay.model(),
                Words.second(stay.from(), stay.zone()).replaceFirst(":\\d\\d$", ""),
                stay.until()
                        .map(at -> Words.second(at, stay.zone()).replaceFirst(":\\d\\d$", ""))
                        .orElse(""),
                stay.standing().word());
    }
}
