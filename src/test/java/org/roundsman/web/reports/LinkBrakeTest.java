package org.roundsman.web.reports;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;

/** OWASP ASVS 5.0, 2.4.1: how often reports are opened without a sign-in. */
class LinkBrakeTest {

    private final Turned clock = new Turned();
    private final LinkBrake brake = new LinkBrake(clock);

    private static final class Turned extends Clock {
        private Instant now = Instant.parse("2026-11-26T12:00:00Z");

        @Override
        public ZoneId getZone() {
            return ZoneOffset.UTC;
        }

        @Override
        public Clock withZone(ZoneId zone) {
            return this;
        }

        @Override
        public Instant instant() {
            return now;
        }
    }

    @Test
    void whoeverGuessesIsSlowedDownAndTheMinuteAfterGoesOn() {
        for (int n = 0; n < 60; n++) {
            assertThat(brake.waits("192.0.2.9")).isZero();
        }
        clock.now = clock.now.plusSeconds(20);
        assertThat(brake.waits("192.0.2.9")).isBetween(40L, 41L);
        assertThat(brake.waits("192.0.2.8")).as("somebody else").isZero();
        clock.now = clock.now.plusSeconds(40);
        assertThat(brake.waits("192.0.2.9")).isZero();
    }
}
