package org.roundsman.snmp.counter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigInteger;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import net.jqwik.api.constraints.Size;

/** Counter arithmetic checked against arithmetic without a bound (java.math.BigInteger). */
class CounterPropertyTest {

    private static final BigInteger TWO_TO_32 = BigInteger.ONE.shiftLeft(32);
    private static final BigInteger TWO_TO_64 = BigInteger.ONE.shiftLeft(64);

    @Property
    void growth32IsTheDifferenceModulo(
            @ForAll @LongRange(max = 0xffff_ffffL) long from, @ForAll @LongRange(max = 0xffff_ffffL) long to) {
        assertThat(BigInteger.valueOf(CounterTrack.growth(32, from, to)))
                .isEqualTo(BigInteger.valueOf(to)
                        .subtract(BigInteger.valueOf(from))
                        .mod(TWO_TO_32));
    }

    @Property
    void growth64IsTheDifferenceModulo(@ForAll long from, @ForAll long to) {
        BigInteger difference = new BigInteger(Long.toUnsignedString(to))
                .subtract(new BigInteger(Long.toUnsignedString(from)))
                .mod(TWO_TO_64);
        assertThat(new BigInteger(Long.toUnsignedString(CounterTrack.growth(64, from, to))))
                .isEqualTo(difference);
    }

    /** Whatever the start, and however often the counter wraps, the growths add up to what was counted. */
    @Property
    void growthsAddUp(
            @ForAll @LongRange(max = 0xffff_ffffL) long start,
            @ForAll @Size(max = 50) List<@LongRange(max = 0xffff_ffffL) Long> steps) {
        CounterTrack track = new CounterTrack();
        track.sample(32, start, 0, new Moment(0, 0));
        double sum = 0;
        long total = 0;
        for (int i = 0; i < steps.size(); i++) {
            total += steps.get(i);
            track.sample(32, (start + total) & 0xffff_ffffL, 0, new Moment(60.0 * (i + 1), 0));
            sum += track.growth();
        }
        assertThat(sum).isEqualTo((double) total);
    }

    @Property
    void noGrowthIsNegative(@ForAll long from, @ForAll long to) {
        CounterTrack track = new CounterTrack();
        track.sample(64, from, 0, new Moment(0, 0));
        track.sample(64, to, 0, new Moment(60, 0));
        assertThat(track.growth()).isGreaterThanOrEqualTo(0);
    }

    /** A clock that runs on, as inexact as we allow, is never taken for a restart, wraps included. */
    @Property
    void runningOnIsNeverARestart(
            @ForAll @LongRange(max = 0xffff_ffffL) long before,
            @ForAll @IntRange(min = 1, max = 7_200) int elapsed,
            @ForAll @DoubleRange(min = -0.99, max = 0.99) double driftPercent) {
        long now = Math.floorMod(before + Math.round(elapsed * (100 + driftPercent)), Uptime.MODULUS);
        assertThat(Uptime.judge(before, elapsed, now)).isEqualTo(Uptime.Verdict.RAN_ON);
    }

    /** A restart is found unless it happened within the tolerance after the sample before. */
    @Property
    void aRestartOfALongRunningDeviceIsFound(
            @ForAll @LongRange(min = 1_000_000, max = 4_000_000_000L) long before,
            @ForAll @IntRange(min = 10, max = 3_600) int elapsed,
            @ForAll @DoubleRange(min = 0, max = 1) double when) {
        long now = Math.round(elapsed * 100 * when);
        assertThat(Uptime.judge(before, elapsed, now)).isEqualTo(Uptime.Verdict.RESTARTED);
    }

    @Property
    void uptimeRunsOnEvenlyOverAnyNumberOfRounds(
            @ForAll @LongRange(max = 0xffff_ffffL) long start, @ForAll @IntRange(min = 1, max = 60) int rounds) {
        Uptime uptime = new Uptime();
        uptime.sample(start, -1, 0);
        double before = uptime.seconds();
        // Ten days apart, so that several wraps come along.
        long distance = 864_000;
        for (int i = 1; i <= rounds; i++) {
            long ticks = (start + i * distance * 100) & 0xffff_ffffL;
            uptime.sample(ticks, -1, i * distance * 1_000_000_000L);
        }
        assertThat(uptime.seconds() - before).isEqualTo((double) rounds * distance, within(0.01));
    }
}
