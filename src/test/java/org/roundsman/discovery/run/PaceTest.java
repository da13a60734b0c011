package org.roundsman.discovery.run;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** The rule is the project's own. */
class PaceTest {

    private long now;

    @Test
    void whatWasReservedAndNotSentIsGivenBack() {
        Pace pace = new Pace(10, () -> now);
        assertThat(pace.take(10)).isZero();
        assertThat(pace.take(1)).isPositive();
        pace.settle(10, 0);
        assertThat(pace.take(1)).isZero();
    }
}
