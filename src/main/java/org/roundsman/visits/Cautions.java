package org.roundsman.visits;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.roundsman.fleet.Device;

/** What can hurt somebody on such a visit, briefly. The usual cautions; local codes come first. Pure. */
public final class Cautions {

    private static final String HEIGHT =
            "Working at height: only who is trained, on a sound ladder or lift on firm ground, with a"
                    + " second person; on masts and roofs with fall protection. Not in wind, rain or ice.";
    private static final String MAINS =
            "Mains: leave distribution boards, sockets and fixed wiring to a licensed electrician."
                    + " PoE cables carry up to 57 V.";
    private static final String LIGHTNING =
            "Lightning: no work on outdoor units, masts or their cables while a storm is near. Leave"
                    + " grounding and surge protection as they are; changes are for licensed people.";
    private static final String RADIO =
            "Radio: channels, power and antenna gain are what the local regulator allows. Fit no other"
                    + " antenna and raise no power without a check. Keep away from an antenna that is on the air.";
    private static final String CODES =
            "Local codes and licensed practice come before this sheet. When in doubt, stop and ask.";

    private Cautions() {}

    /**
     * In the order of the sheet; lightning where a unit stands outdoors, or where nobody knows.
     *
     * @param others devices that are concerned as well
     */
    public static List<String> of(List<Unit> units, List<Device> others) {
        boolean outdoors = units.isEmpty()
                || Stream.concat(units.stream().map(Unit::device), others.stream())
                        .anyMatch(device -> device.model == null || HighPlaces.outdoors(device));
        List<String> cautions = new ArrayList<>(List.of(HEIGHT, MAINS));
        if (outdoors) {
            cautions.add(LIGHTNING);
        }
        cautions.add(RADIO);
        cautions.add(CODES);
        return List.copyOf(cautions);
    }
}
