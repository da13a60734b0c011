package org.roundsman.warranty;

import java.time.Instant;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * What is known of a unit by its serial number, wherever it stands or lies.
 *
 * @param modelId what it is, where it was ever told or entered
 * @param fate what became of it when it left for good, such as {@code scrapped}; empty while it did not
 * @param fateSince empty as long as there is no fate
 * @param firstRead when a device first told its serial number; empty when none did
 */
public record KnownUnit(OptionalLong modelId, String fate, Optional<Instant> firstRead, Optional<Instant> fateSince) {

    static final KnownUnit NOTHING = new KnownUnit(OptionalLong.empty(), "", Optional.empty(), Optional.empty());

    /** Whether it left for good. */
    boolean gone() {
        return !fate.isEmpty();
    }
}
