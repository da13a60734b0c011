package org.roundsman.polling;

import java.time.Duration;

/**
 * When devices are due. Rounds of one device lie on a fixed grid, interval apart, shifted by a phase of its own, so that a
 * fleet's rounds spread evenly and stay where they are across restarts.
 */
final class Timetable {

    /** Unanswered rounds after which a device counts as silent, as the span rules have it. */
    static final int SILENT_AFTER = 3;

    /** Rounds at each step of the back-off. */
    private static final int ROUNDS_A_STEP = 5;

    private static final double GOLDEN = 0.6180339887498949;

    private final Duration longestBackOff;

    Timetable(Duration longestBackOff) {
        this.longestBackOff = longestBackOff;
    }

    /** The device's shift within its interval, in milliseconds. Multiples of the golden ratio spread any run of ids. */
    static long phase(long deviceId, Duration interval) {
        double turn = deviceId * GOLDEN;
        return (long) ((turn - Math.floor(turn)) * interval.toMillis());
    }

    /** The first grid time after {@code now}, both in epoch milliseconds. */
    static long nextOnGrid(long now, long deviceId, Duration interval) {
        long step = interval.toMillis();
        long phase = phase(deviceId, interval);
        return Math.floorDiv(now - phase, step) * step + step + phase;
    }

    /**
     * When the round after this one is due.
     *
     * @param due when this round was due, epoch milliseconds, on the grid
     * @param misses unanswered rounds in a row, this one included
     */
    long after(long due, Duration interval, int misses) {
        return due + interval.toMillis() * stride(interval, misses);
    }

    /** Whole intervals until the next round: doubled with every five unanswered ones, within the longest back-off. */
    int stride(Duration interval, int misses) {
        if (misses < SILENT_AFTER) {
            return 1;
        }
        int doublings = Math.min(16, (misses - SILENT_AFTER) / ROUNDS_A_STEP);
        long most = Math.max(1, longestBackOff.toMillis() / interval.toMillis());
        return (int) Math.min(1L << doublings, most);
    }
}
