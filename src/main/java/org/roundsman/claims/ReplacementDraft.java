package org.roundsman.claims;

import java.time.Instant;

/**
 * Another unit for a place, as entered.
 *
 * @param spareId the spare that is taken; null where a serial number is given instead
 * @param serial of the new unit; empty where a spare is named
 * @param modelId of the new unit; null where a spare is named, or for the same model as before
 * @param at when it came into its place; null for now
 * @param old what becomes of the unit that stood there
 * @param roomId where that lies from now on, with {@link Old#SPARE}; a room or a site
 * @param claimId the claim from which this is done; null for none, or for whatever claim of the old unit goes on
 */
public record ReplacementDraft(
        long deviceId,
        Long spareId,
        String serial,
        Long modelId,
        Instant at,
        Old old,
        Long roomId,
        Long siteId,
        String note,
        Long claimId) {

    /** What becomes of the unit that stood in the place. */
    public enum Old {
        SENT_BACK("goes back to maker or supplier"),
        SCRAPPED("is scrapped"),
        SPARE("becomes a spare");

        private final String word;

        Old(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }
}
