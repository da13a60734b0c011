package org.roundsman.polling;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.stream.LongStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;

class TimetableTest {

    private static final Duration MINUTE = Duration.ofSeconds(60);
    private final Timetable timetable = new Timetable(Duration.ofMinutes(5));

    @Property
    void nextTimeOnTheGridIsAheadByAtMostOneInterval(
            @ForAll @LongRange(min = 0, max = 4_000_000_000_000L) long now,
            @ForAll @LongRange(min = 1, max = 1_000_000) long device,
            @ForAll @IntRange(min = 10, max = 3600) int seconds) {
        Duration interval = Duration.ofSeconds(seconds);
        long next = Timetable.nextOnGrid(now, device, interval);
        assertThat(next - now).isBetween(1L, interval.toMillis());
        assertThat(Timetable.nextOnGrid(next, device, interval)).isEqualTo(next + interval.toMillis());
    }

    @Test
    void aThousandConsecutiveDevicesSpreadEvenlyOverTheirInterval() {
        int[] perSecond = new int[60];
        LongStream.rangeClosed(501, 1500).forEach(id -> perSecond[(int) (Timetable.phase(id, MINUTE) / 1000)]++);
        // 1000 over 60 seconds is 16.7 a second; multiples of the golden ratio stay within a few of that.
        assertThat(java.util.Arrays.stream(perSecond).boxed())
                .allSatisfy(n -> assertThat(n).isBetween(13, 21));
    }

    @Test
    void answeringAndBarelyMissedDevicesKeepTheirInterval() {
        assertThat(timetable.after(1_000, MINUTE, 0)).isEqualTo(61_000);
        assertThat(timetable.after(1_000, MINUTE, 2)).isEqualTo(61_000);
    }

    @Test
    void silentDevicesAreVisitedLessOftenUpToTheLongestBackOff() {
        assertThat(timetable.stride(MINUTE, 3)).isEqualTo(1);
        assertThat(timetable.stride(MINUTE, 8)).isEqualTo(2);
        assertThat(timetable.stride(MINUTE, 13)).isEqualTo(4);
        assertThat(timetable.stride(MINUTE, 18)).isEqualTo(5);
        assertThat(timetable.stride(MINUTE, Integer.MAX_VALUE)).isEqualTo(5);
    }

    @Test
    void anIntervalLongerThanTheBackOffIsKept() {
        assertThat(timetable.stride(Duration.ofHours(1), 100)).isEqualTo(1);
    }
}
