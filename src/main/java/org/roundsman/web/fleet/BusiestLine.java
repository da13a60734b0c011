package org.roundsman.web.fleet;

import java.util.Optional;
import org.roundsman.readings.BusiestRadio;
import org.roundsman.web.page.Words;

/**
 * The busiest radio as it is shown.
 *
 * @param figure its channel utilisation, or that there is none
 * @param where device and radio, or the radio alone, or empty
 * @param deviceId 0 when there is none
 */
public record BusiestLine(String figure, String where, long deviceId) {

    static BusiestLine of(Optional<BusiestRadio> busiest, boolean withDevice) {
        return busiest.map(radio -> new BusiestLine(
                        Words.figure(radio.utilisation(), 0, "%"),
                        (withDevice ? radio.device() + ", " : "") + "radio " + radio.number(),
                        radio.deviceId()))
                .orElse(new BusiestLine(Words.NOT_AVAILABLE, "", 0));
    }
}
