package org.roundsman.demo;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;

/** A clock that runs as any other, but elsewhere in time, and can be moved on. Thread-safe. */
public final class ShiftedClock extends Clock {

    private volatile Duration shift;

    /** It begins at that moment. */
    public ShiftedClock(Instant begin) {
        shift = Duration.between(Instant.now(), begin);
    }

    /** Passes over so much time. */
    public synchronized void skip(Duration time) {
        shift = shift.plus(time);
    }

    @Override
    public Instant instant() {
        return Instant.now().plus(shift);
    }

    @Override
    public ZoneId getZone() {
        return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
        throw new UnsupportedOperationException("this clock is in UTC");
    }
}
