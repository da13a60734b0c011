package org.roundsman.discovery.run;

import java.util.function.LongSupplier;

/**
 * Holds back requests so that no more than so many a second leave in the long run. What a visit will need is reserved
 * before it; what it did need is settled after it, so that retries and long surveys count as well. Thread-safe.
 */
public final class Pace {

    private static final double SECOND = 1e9;

    private final double perSecond;
    private final double most;
    private final LongSupplier nanos;
    private double left;
    private long at;

    /** @param nanos a clock as System.nanoTime is one */
    public Pace(int perSecond, LongSupplier nanos) {
        this.perSecond = perSecond;
        this.most = Math.max(1, perSecond / 20.0);
        this.nanos = nanos;
        this.left = 1;
        this.at = nanos.getAsLong();
    }

    /** Nanoseconds to wait before so many requests may begin; 0 when they may now, and then they are taken. */
    synchronized long take(int requests) {
        refill();
        if (left >= 1) {
            left -= requests;
            return 0;
        }
        return Math.max(1, (long) Math.ceil((1 - left) / perSecond * SECOND));
    }

    /** Of those reserved, that many were sent. */
    synchronized void settle(int reserved, int sent) {
        refill();
        left = Math.min(most, left + reserved - sent);
    }

    private void refill() {
        long now = nanos.getAsLong();
        left = Math.min(most, left + (now - at) / SECOND * perSecond);
        at = now;
    }
}
