package org.roundsman.readings.store;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Two looks at sysUpTime (RFC 3418), which wraps at 2^32 hundredths of a second: 42949672.96 s (TimeTicks, RFC 2578).
 */
class RestartsTest {

    @ParameterizedTest
    @CsvSource({
        "ran on,                        1000,     60,      1060,   false",
        "ran on with a slow clock,      1000,     3600,    4570,   false",
        "restarted a moment ago,        1000,     60,      12,     true",
        "restarted right after,         1000,     60,      59,     true",
        "restarted while we were away,  90000,    86400,   4000,   true",
        "wrapped,                       42949600, 120,     47,     false",
        "a wrap that we learnt of,      100,      60,      42949832, false",
        "fits neither way,              1000,     60,      5000,   false",
        "unknown before,                NaN,      60,      12,     false"
    })
    void anUptimeThatCannotHaveRunOnIsARestart(
            String what, double before, long seconds, double now, boolean restarted) {
        assertThat(Restarts.restarted(new Restarts.Seen(0, before), new Restarts.Seen(seconds * 1000, now)))
                .as(what)
                .isEqualTo(restarted);
    }
}
