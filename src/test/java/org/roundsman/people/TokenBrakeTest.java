package org.roundsman.people;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;

class TokenBrakeTest {

    private static final String HERE = "192.0.2.17";
    private static final String ELSEWHERE = "198.51.100.3";

    private final Hand clock = new Hand();
    private final TokenBrake brake = new TokenBrake(3, clock);

    private void fail(String address, int times) {
        for (int i = 0; i < times; i++) {
            brake.failed(address, "wrong " + i);
        }
    }

    @Test
    void anAddressWithFewWrongTokensGoesOn() {
        fail(HERE, 2);
        assertThat(brake.waits(HERE, "next")).isZero();
    }

    @Test
    void afterTooManyTheAddressWaitsForTheEndOfTheMinute() {
        fail(HERE, 3);
        assertThat(brake.waits(HERE, "next")).isBetween(1L, 61L);
        clock.pass(Duration.ofSeconds(59));
        assertThat(brake.waits(HERE, "next")).isBetween(1L, 2L);
        clock.pass(Duration.ofSeconds(1));
        assertThat(brake.waits(HERE, "next")).isZero();
        fail(HERE, 1);
        assertThat(brake.waits(HERE, "next")).isZero();
    }

    @Test
    void oneAddressDoesNotSlowAnotherDown() {
        fail(HERE, 9);
        assertThat(brake.waits(ELSEWHERE, "next")).isZero();
    }

    @Test
    void aTokenThatWorkedGoesOnBehindTheSameAddress() {
        brake.worked("good");
        fail(HERE, 9);
        assertThat(brake.waits(HERE, "good")).isZero();
        brake.failed(HERE, "good"); // revoked meanwhile
        assertThat(brake.waits(HERE, "good")).isPositive();
    }

    @Test
    void itIsToldOnceWhenTheBrakeComesOn() {
        assertThat(brake.failed(HERE, "a")).isFalse();
        assertThat(brake.failed(HERE, "b")).isFalse();
        assertThat(brake.failed(HERE, "c")).isTrue();
        assertThat(brake.failed(HERE, "d")).isFalse();
    }

    /** A clock that is moved by hand. */
    private static final class Hand extends Clock {
        private Instant now = Instant.parse("2026-03-04T12:00:00Z");

        void pass(Duration time) {
            now = now.plus(time);
        }

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
}
