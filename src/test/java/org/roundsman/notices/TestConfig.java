package org.roundsman.notices;

import java.time.Duration;
import java.util.Optional;

/** The defaults, with another bound where a test wants one. */
record TestConfig(int mostPerHour, boolean webhookLocalAllowed) implements NoticesConfig {

    static TestConfig usual() {
        return new TestConfig(12, true);
    }

    static TestConfig most(int perHour) {
        return new TestConfig(perHour, true);
    }

    @Override
    public boolean enabled() {
        return true;
    }

    @Override
    public Optional<String> baseUrl() {
        return Optional.of("https://roundsman.example/");
    }

    @Override
    public Duration every() {
        return Duration.ofSeconds(5);
    }

    @Override
    public Duration calmTime() {
        return Duration.ofMinutes(10);
    }

    @Override
    public Duration settleWait() {
        return Duration.ofMinutes(2);
    }

    @Override
    public Duration collect() {
        return Duration.ofMinutes(2);
    }

    @Override
    public Duration firstRetry() {
        return Duration.ofSeconds(30);
    }

    @Override
    public Duration longestRetry() {
        return Duration.ofHours(1);
    }

    @Override
    public Duration giveUpAfter() {
        return Duration.ofHours(24);
    }

    @Override
    public Duration keep() {
        return Duration.ofDays(90);
    }

    @Override
    public Duration webhookTimeout() {
        return Duration.ofSeconds(2);
    }
}
