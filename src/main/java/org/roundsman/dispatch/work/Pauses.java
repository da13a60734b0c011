package org.roundsman.dispatch.work;

import java.time.Duration;
import java.util.random.RandomGenerator;

/** Pauses between attempts: each twice the one before, up to a longest one, scattered so that many do not come at once. */
public final class Pauses {

    private static final int DOUBLINGS = 20;

    private final Duration first;
    private final Duration longest;
    private final RandomGenerator random;

    public Pauses(Duration first, Duration longest, RandomGenerator random) {
        this.first = first;
        this.longest = longest;
        this.random = random;
    }

    /**
     * The pause after an attempt that failed: from three quarters to five quarters of the plain one.
     *
     * @param attempts made so far, at least 1
     */
    Duration after(int attempts) {
        long plain = first.toMillis() << Math.min(attempts - 1, DOUBLINGS);
        long bounded = Math.min(plain, longest.toMillis());
        return Duration.ofMillis(Math.round(bounded * (0.75 + random.nextDouble() / 2)));
    }
}
