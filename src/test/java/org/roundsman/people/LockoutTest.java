package org.roundsman.people;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;

class LockoutTest {

    private static final Instant NOW = Instant.parse("2026-03-04T10:00:00Z");

    private final Lockout lockout = new Lockout(5, Duration.ofMinutes(15));
    private final Account account = new Account();

    @Test
    void theFifthFailureInARowLocksForAQuarterOfAnHour() {
        fail(4, NOW);
        assertThat(lockout.locked(account, NOW)).isFalse();
        fail(1, NOW);
        assertThat(lockout.locked(account, NOW)).isTrue();
        assertThat(lockout.locked(account, NOW.plus(Duration.ofMinutes(15)).minusMillis(1)))
                .isTrue();
        assertThat(lockout.locked(account, NOW.plus(Duration.ofMinutes(15)))).isFalse();
    }

    @Test
    void aLockThatHasRunOutStartsTheCountAfresh() {
        fail(5, NOW);
        Instant later = NOW.plus(Duration.ofHours(1));
        fail(4, later);
        assertThat(lockout.locked(account, later)).isFalse();
        fail(1, later);
        assertThat(lockout.locked(account, later)).isTrue();
    }

    @Test
    void theRightPasswordForgetsFailures() {
        fail(4, NOW);
        lockout.clear(account);
        fail(4, NOW);
        assertThat(lockout.locked(account, NOW)).isFalse();
    }

    private void fail(int times, Instant at) {
        for (int i = 0; i < times; i++) {
            lockout.failed(account, at);
        }
    }
}
