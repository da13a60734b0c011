package org.roundsman.notices;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;

/** Shows what it is set to. */
final class SetClock extends Clock {

    private volatile Instant now;

    SetClock(Instant now) {
        this.now = now;
    }

    void forward(Duration time) {
        now = now.plus(time);
    }

    void set(Instant time) {
        now = time;
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
        return this;
    }
}
