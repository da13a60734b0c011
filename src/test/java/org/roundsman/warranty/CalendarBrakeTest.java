package org.roundsman.warranty;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;

/** OWASP ASVS 5.0, 2.4.1: how often calendars are read without a sign-in. */
class CalendarBrakeTest {

    private final Turned clock = new Turned();
    private final CalendarBrake brake = new CalendarBrake(new Bounds(), clock);

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

    /** Two reads of one address and five requests of one network address within a minute. */
    private static final class Bounds implements WarrantyConfig {
        @Override
        public boolean alarms() {
            return false;
        }

        @Override
        public int evidencePerCustomer() {
            return 1;
        }

        @Override
        public int calendarsPerPerson() {
            return 1;
        }

        @Override
        public int calendarReads() {
            return 2;
        }

        @Override
        public int calendarAsks() {
            return 5;
        }
    }

    @Test
    void oneCalendarIsReadSoOftenAndTheMinuteAfterAgain() {
        assertThat(brake.waits("192.0.2.1", "a")).isZero();
        assertThat(brake.waits("192.0.2.2", "a")).isZero();
        clock.now = clock.now.plusSeconds(20);
        assertThat(brake.waits("192.0.2.3", "a")).isBetween(40L, 41L);
        assertThat(brake.waits("192.0.2.3", "b")).as("another calendar").isZero();
        clock.now = clock.now.plus(Duration.ofSeconds(40));
        assertThat(brake.waits("192.0.2.3", "a")).isZero();
    }

    @Test
    void whoeverGuessesIsSlowedDown() {
        for (int n = 0; n < 5; n++) {
            assertThat(brake.waits("192.0.2.9", "guess " + n)).isZero();
        }
        assertThat(brake.waits("192.0.2.9", "guess 6")).isPositive();
        assertThat(brake.waits("192.0.2.8", "guess 7")).as("somebody else").isZero();
    }
}
