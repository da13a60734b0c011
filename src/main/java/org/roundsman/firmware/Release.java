package org.roundsman.firmware;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * What is decided about one release of a line.
 *
 * @param modelId the one model that it is decided for; empty for all models of the line
 * @param model name of that model, or empty
 * @param reason why it was withdrawn; else a note, may be empty
 * @param withdrawnOn only of a withdrawn one
 * @param releasedOn day on which the maker released it, where known
 */
public record Release(
        long id,
        long lineId,
        OptionalLong modelId,
        String model,
        String version,
        Stand stand,
        String reason,
        Optional<LocalDate> withdrawnOn,
        Optional<LocalDate> releasedOn) {

    /** What is decided. */
    public enum Stand {
        /** It is to run everywhere. */
        RECOMMENDED("recommended"),
        /** It may run; nothing need be done. */
        ACCEPTED("accepted"),
        /** The pilot sites run it first. */
        PILOT("pilot"),
        /** It must not run any more. */
        WITHDRAWN("withdrawn");

        private final String word;

        Stand(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }
}
