package org.roundsman.rules.fold;

import java.util.List;

/**
 * Times in which we saw none of the devices, since our own view was lost. That one fell silent in them tells nothing about
 * it. Immutable.
 */
public record Unseen(List<Time> times) {

    /** We saw all the time. */
    public static final Unseen NONE = new Unseen(List.of());

    /**
     * One of them, in milliseconds since 1970-01-01T00:00Z.
     *
     * @param from its first moment
     * @param until its last one; the greatest number there is while it goes on
     */
    public record Time(long from, long until) {}

    public Unseen {
        times = List.copyOf(times);
    }

    boolean covers(long at) {
        return times.stream().anyMatch(time -> time.from <= at && at <= time.until);
    }
}
