package org.roundsman.discovery;

import java.util.List;

/**
 * What the rules of recognition say about one thing found.
 *
 * @param deviceId the device of the fleet that it is, or seems to be; null where there is none
 * @param reason one sentence
 * @param evidence what speaks for it and against it, one line each
 * @param adoptable whether adopting it would do something sensible
 */
public record Decision(Standing standing, Long deviceId, String reason, List<String> evidence, boolean adoptable) {

    public Decision {
        evidence = List.copyOf(evidence);
    }

    /** Whether adopting it changes a device that is in the fleet. */
    public boolean changesDevice() {
        return standing == Standing.NEW_ADDRESS || standing == Standing.MOVED;
    }
}
