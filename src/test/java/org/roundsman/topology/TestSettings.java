package org.roundsman.topology;

import java.time.Duration;

/** The defaults, outside of the container. */
class TestSettings implements TopologyConfig {

    @Override
    public boolean enabled() {
        return true;
    }

    @Override
    public Duration every() {
        return Duration.ofMinutes(15);
    }

    @Override
    public Duration statesEvery() {
        return Duration.ofMinutes(3);
    }

    @Override
    public Duration withoutLldpEvery() {
        return Duration.ofHours(24);
    }

    @Override
    public int atOnce() {
        return 16;
    }

    @Override
    public int oldAfter() {
        return 3;
    }

    @Override
    public int edgePortAddresses() {
        return 64;
    }

    @Override
    public Duration forgetAfter() {
        return Duration.ofDays(30);
    }

    @Override
    public int maxRows() {
        return 20_000;
    }
}
