package org.roundsman.demo;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;

/** A clock that stands until it is set. Thread-safe. */
public final class SetClock extends Clock {

    private volatile Instant now;

    public SetClock(String now) {
        this.now = Instant.parse(now);
    }

    public void set(Instant moment) {
        now = moment;
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
        throw new UnsupportedOperationException("this clock is in UTC");
    }
}
