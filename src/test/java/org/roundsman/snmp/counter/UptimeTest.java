package org.roundsman.snmp.counter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * TimeTicks count hundredths of a second modulo 2^32 (RFC 2578 section 7.1.8), which is 497 days, 2 hours, 27 minutes
 * and 52.96 seconds. The tolerance of 5 s and 1 % is our own choice.
 */
class UptimeTest {

    @ParameterizedTest
    @CsvSource({
        "8640000,300,8670000,RAN_ON",
        "8640000,300,12000,RESTARTED",
        "4294950000,300,12704,RAN_ON",
        "4294950000,300,5000,RESTARTED",
        "100,300,30100,RAN_ON",
        "30000,300,30000,RESTARTED",
        "8640000,300,8650000,UNSURE"
    })
    void tellsAWrapFromARestart(long before, double elapsed, long now, Uptime.Verdict verdict) {
        assertThat(Uptime.judge(before, elapsed, now)).isEqualTo(verdict);
    }

    @Test
    void countsOnPastTheWrap() {
        Uptime uptime = new Uptime();
        uptime.sample(4_294_950_000L, -1, 0);
        Moment before = uptime.moment();
        assertThat(uptime.sample(12_704, -1, TimeUnit.SECONDS.toNanos(300))).isEqualTo(Uptime.Verdict.RAN_ON);
        assertThat(uptime.seconds()).isEqualTo(42_949_672.96 + 127.04, within(0.001));
        assertThat(uptime.moment().seconds() - before.seconds()).isEqualTo(300, within(0.001));
        assertThat(uptime.moment().epoch()).isEqualTo(before.epoch());
    }

    @Test
    void beginsAfreshAfterARestart() {
        Uptime uptime = new Uptime();
        uptime.sample(8_640_000, -1, 0);
        int epoch = uptime.moment().epoch();
        assertThat(uptime.sample(12_000, -1, TimeUnit.SECONDS.toNanos(300))).isEqualTo(Uptime.Verdict.RESTARTED);
        assertThat(uptime.seconds()).isEqualTo(120);
        assertThat(uptime.moment().epoch()).isNotEqualTo(epoch);
    }

    /** snmpEngineBoots counts re-initialisations (RFC 3411). */
    @Test
    void takesAChangedBootCountForARestart() {
        Uptime uptime = new Uptime();
        uptime.sample(8_640_000, 7, 0);
        assertThat(uptime.sample(8_670_000, 8, TimeUnit.SECONDS.toNanos(300))).isEqualTo(Uptime.Verdict.RESTARTED);
    }

    @Test
    void learnsOfOlderWrapsFromTheEngineTime() {
        Uptime uptime = new Uptime();
        uptime.sample(12_704, -1, 0);
        uptime.widen(42_949_673 + 127);
        assertThat(uptime.seconds()).isEqualTo(42_949_672.96 + 127.04, within(0.001));
        uptime.sample(18_704, -1, TimeUnit.SECONDS.toNanos(60));
        assertThat(uptime.seconds()).isEqualTo(42_949_672.96 + 187.04, within(0.001));
    }

    @Test
    void doesNotBelieveAnEngineTimeThatIsNoWholeWrapAway() {
        Uptime uptime = new Uptime();
        uptime.sample(12_704, -1, 0);
        uptime.widen(30_000_000);
        assertThat(uptime.seconds()).isEqualTo(127.04);
    }

    @Test
    void fallsBackOnOurClockWhereTheDeviceGivesNoUptime() {
        Uptime uptime = new Uptime();
        uptime.sample(-1, -1, TimeUnit.SECONDS.toNanos(10));
        Moment before = uptime.moment();
        uptime.sample(-1, -1, TimeUnit.SECONDS.toNanos(70));
        assertThat(uptime.seconds()).isNaN();
        assertThat(uptime.moment()).isEqualTo(new Moment(70, before.epoch()));
        uptime.sample(500, -1, TimeUnit.SECONDS.toNanos(130));
        assertThat(uptime.moment().epoch()).as("another time line").isNotEqualTo(before.epoch());
    }
}
