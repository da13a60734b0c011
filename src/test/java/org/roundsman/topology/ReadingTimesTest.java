package org.roundsman.topology;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.Optional;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.topology.ReadingTimes.Kind;

/** When wiring is read, with the default settings. */
class ReadingTimesTest {

    private static final long NOW = Instant.parse("2026-11-25T12:00:00Z").toEpochMilli();
    private static final long MINUTE = Duration.ofMinutes(1).toMillis();

    private static ReadingTimes of(long id, DeviceKind kind, Long readAt, boolean lldp) {
        Optional<Instant> read = Optional.ofNullable(readAt).map(Instant::ofEpochMilli);
        return new ReadingTimes(new Watched(id, 1, kind, read, lldp), new TestSettings(), NOW);
    }

    @Test
    void aNewDeviceIsReadAtOnce() {
        assertThat(of(7, DeviceKind.NETWORK_SWITCH, null, true).due(NOW)).contains(Kind.FULL);
    }

    @Test
    void aStartOfTheServiceDoesNotReadEverythingAnew() {
        ReadingTimes times = of(7, DeviceKind.NETWORK_SWITCH, NOW - MINUTE, true);
        assertThat(times.due(NOW)).isEmpty();
        assertThat(times.due(NOW + 15 * MINUTE)).contains(Kind.FULL);
    }

    @Test
    void statesAreReadInBetween() {
        ReadingTimes times = of(7, DeviceKind.NETWORK_SWITCH, null, true);
        times.begin(Kind.FULL, NOW);
        times.ended(true, NOW);
        long states = LongStream.rangeClosed(0, 15)
                .filter(minute -> {
                    boolean due = times.due(NOW + minute * MINUTE).equals(Optional.of(Kind.STATES));
                    if (due) {
                        times.begin(Kind.STATES, NOW + minute * MINUTE);
                    }
                    return due;
                })
                .count();
        assertThat(states).isBetween(2L, 5L);
    }

    @Test
    void statesOfAnAccessPointAreNotReadAndOneWithoutLldpIsAskedDaily() {
        ReadingTimes times = of(7, DeviceKind.ACCESS_POINT, null, true);
        times.begin(Kind.FULL, NOW);
        times.ended(false, NOW);
        long due = LongStream.rangeClosed(1, 24 * 60)
                .filter(minute -> times.due(NOW + minute * MINUTE).isPresent())
                .findFirst()
                .orElseThrow();
        ReadingTimes other = of(7, DeviceKind.ACCESS_POINT, NOW, false);
        assertThat(other.dueAt()).isLessThanOrEqualTo(NOW + 24 * 60 * MINUTE);
        assertThat(times.due(NOW + (due - 1) * MINUTE)).isEmpty();
    }

    /** A thousand switches: no minute of the quarter hour has more than twice its share. */
    @Test
    void readingsAreSpreadOverTheirInterval() {
        int[] perMinute = new int[15];
        for (long id = 1; id <= 1_000; id++) {
            ReadingTimes times = of(id, DeviceKind.NETWORK_SWITCH, NOW, true);
            int minute = 0;
            while (!times.due(NOW + (minute + 1) * MINUTE).equals(Optional.of(Kind.FULL))) {
                minute++;
            }
            perMinute[minute]++;
        }
        assertThat(Arrays.stream(perMinute)).allMatch(count -> count > 1_000 / 30 && count < 2 * 1_000 / 15);
    }

    /** A link that flaps a hundred times a minute costs two readings, not a hundred. */
    @Test
    void whatHappensBringsAReadingForwardButNotMoreThanOneAMinute() {
        ReadingTimes times = of(7, DeviceKind.NETWORK_SWITCH, NOW, true);
        int full = 0;
        for (long at = NOW; at < NOW + 2 * MINUTE; at += 1_000) {
            times.happened(at);
            if (times.due(at).equals(Optional.of(Kind.FULL))) {
                times.begin(Kind.FULL, at);
                times.ended(true, at);
                full++;
            }
        }
        assertThat(full).isEqualTo(2);
    }

    @Test
    void afterARestartItIsReadTwiceSinceNeighboursTakeTheirTime() {
        ReadingTimes times = of(7, DeviceKind.NETWORK_SWITCH, NOW, true);
        times.happened(NOW);
        assertThat(times.due(NOW + 10_000)).contains(Kind.FULL);
        times.begin(Kind.FULL, NOW + 10_000);
        times.ended(true, NOW + 10_000);
        assertThat(times.due(NOW + 60_000)).isNotEqualTo(Optional.of(Kind.FULL));
        assertThat(times.due(NOW + 76_000)).contains(Kind.FULL);
    }
}
