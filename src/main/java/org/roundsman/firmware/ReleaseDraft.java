package org.roundsman.firmware;

import java.time.LocalDate;

/**
 * A decision about a release as entered. Nulls are faults that saving names, but for the model and the dates.
 *
 * @param modelId null for all models of the line
 * @param withdrawnOn null for today; left out unless withdrawn
 * @param releasedOn null where not known
 */
public record ReleaseDraft(
        Long modelId, String version, Release.Stand stand, String reason, LocalDate withdrawnOn, LocalDate releasedOn) {

    /** The same with other words around the version and the reason left out. */
    ReleaseDraft tidy(LocalDate today) {
        boolean withdrawn = stand == Release.Stand.WITHDRAWN;
        LocalDate day = withdrawnOn == null ? today : withdrawnOn;
        return new ReleaseDraft(
                modelId,
                version == null ? "" : version.strip(),
                stand,
                reason == null ? "" : reason.strip(),
                withdrawn ? day : null,
                releasedOn);
    }
}
