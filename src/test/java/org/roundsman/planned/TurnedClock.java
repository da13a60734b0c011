package org.roundsman.planned;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;

/** A clock that is turned by hand. */
final class TurnedClock extends Clock {

    private Instant now;

    TurnedClock(Instant start) {
        now = start;
    }

    void turn(Instant to) {
        now = to;
    }

    @Override
    public ZoneId getZone() {
        return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
        throw new UnsupportedOperationException();
    }

    @Override
    public Instant instant() {
        return now;
    }
}
