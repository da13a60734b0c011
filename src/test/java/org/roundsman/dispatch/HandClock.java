package org.roundsman.dispatch;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;

/** A clock that is turned by hand. */
final class HandClock extends Clock {

    private volatile Instant now;

    HandClock(Instant start) {
        now = start;
    }

    void turn(String to) {
        now = Instant.parse(to);
    }

    void forward(Duration time) {
        now = now.plus(time);
    }

    @Override
    public Instant instant() {
        return now;
    }

    @Override
    public ZoneId getZone() {
        return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
        throw new UnsupportedOperationException();
    }
}
