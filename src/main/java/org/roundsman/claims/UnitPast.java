package org.roundsman.claims;

import java.util.List;
import java.util.Optional;
import org.roundsman.readings.Availability;

/**
 * A unit with its own past.
 *
 * @param lies where it lies in store now
 * @param lay where it lay in store at any time, the latest first
 * @param stays where it stood, the latest first
 * @param claims about it, the newest first
 * @param purchase what was bought with it, in words, or empty
 */
public record UnitPast(
        Unit unit, Optional<Spare> lies, List<Spare> lay, List<Stood> stays, List<Claim> claims, String purchase) {

    /**
     * A stay with what the place read meanwhile.
     *
     * @param read empty when the place left the fleet, and with it its readings
     */
    public record Stood(Stay stay, Optional<Read> read) {}

    /** What a place read while a unit stood there. */
    public record Read(Availability availability, int restarts, long alarms) {}

    /** Where it is, in words. */
    public String whereabouts() {
        List<Stay> now = stays.stream()
                .map(Stood::stay)
                .filter(stay -> stay.until().isEmpty())
                .toList();
        if (now.size() > 1) {
            return "said by " + now.size() + " devices at once";
        }
        if (now.size() == 1) {
            return "stands at " + now.get(0).device() + ", " + now.get(0).site();
        }
        return lies.map(spare -> "lies in store: " + spare.where())
                .or(() -> unit.fate().map(Fate::word))
                .orElse("not known");
    }
}
