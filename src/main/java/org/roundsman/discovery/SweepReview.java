package org.roundsman.discovery;

import java.util.List;

/**
 * What the latest sweep of a site found, held against the fleet as it is now.
 *
 * @param found in the order of their addresses; what was set aside is left out
 * @param unanswered devices of the site that were not recognised in this sweep
 */
public record SweepReview(Sweep sweep, List<FoundDevice> found, List<Unanswered> unanswered) {

    public SweepReview {
        found = List.copyOf(found);
        unanswered = List.copyOf(unanswered);
    }

    /**
     * A device of the fleet that was not met.
     *
     * @param reason in plain words
     */
    public record Unanswered(long deviceId, String name, String host, int port, String reason) {}
}
