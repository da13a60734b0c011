package org.roundsman.readings;

import java.time.Instant;
import java.util.Optional;

/**
 * How far storing is behind the rounds.
 *
 * @param queued readings waiting in memory
 * @param spilled readings waiting on disk
 * @param lost readings that could not be kept anywhere since start
 * @param failingSince since when the database takes nothing, empty while it does
 * @param trouble what is wrong and what mends it, in plain words; empty when nothing is
 * @param oldest when the oldest waiting reading was taken
 */
public record Backlog(
        long queued,
        long spilled,
        long lost,
        Optional<Instant> failingSince,
        Optional<String> trouble,
        Optional<Instant> oldest) {

    /** Whether pages must say that they show the past. */
    public boolean behind() {
        return failingSince.isPresent() || spilled > 0;
    }
}
