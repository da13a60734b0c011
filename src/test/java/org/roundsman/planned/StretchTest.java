package org.roundsman.planned;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

class StretchTest {

    private static Stretch minutes(long from, long to) {
        return new Stretch(Instant.EPOCH.plusSeconds(from * 60), Instant.EPOCH.plusSeconds(to * 60));
    }

    @Test
    void oneWithoutLengthIsNone() {
        assertThatThrownBy(() -> minutes(3, 3)).isInstanceOf(IllegalArgumentException.class);
        assertThat(Stretch.of(Instant.EPOCH, Instant.EPOCH)).isEmpty();
        assertThat(minutes(3, 5).within(Instant.EPOCH, Instant.EPOCH.plusSeconds(180)))
                .isEmpty();
    }

    @Test
    void theEndIsNotCovered() {
        assertThat(minutes(3, 5).covers(Instant.EPOCH.plusSeconds(180))).isTrue();
        assertThat(minutes(3, 5).covers(Instant.EPOCH.plusSeconds(300))).isFalse();
    }

    /** Against a set of minutes. */
    @Property(tries = 300)
    void mergedCoversTheSameMinutes(
            @ForAll @Size(max = 12) List<@IntRange(max = 500) Integer> starts,
            @ForAll @IntRange(min = 1, max = 90) int length,
            @ForAll @IntRange(max = 300) int from) {
        List<Stretch> some = new ArrayList<>();
        BitSet covered = new BitSet();
        for (int i = 0; i < starts.size(); i++) {
            int start = starts.get(i);
            some.add(minutes(start, start + length + i));
            covered.set(start, start + length + i);
        }
        List<Stretch> merged = Stretch.merged(some);
        BitSet again = new BitSet();
        Instant last = Instant.MIN;
        for (Stretch one : merged) {
            assertThat(one.from()).isAfter(last);
            last = one.to();
            again.set((int) one.from().getEpochSecond() / 60, (int) one.to().getEpochSecond() / 60);
        }
        assertThat(again).isEqualTo(covered);
        Instant begin = Instant.EPOCH.plusSeconds(from * 60L);
        assertThat(Stretch.shared(merged, begin, begin.plusSeconds(7_200)))
                .isEqualTo(Duration.ofMinutes(covered.get(from, from + 120).cardinality()));
    }

    /** Against a set of minutes. */
    @Property(tries = 300)
    void whatIsLeftCoversTheOtherMinutes(
            @ForAll @Size(max = 8) List<@IntRange(max = 500) Integer> starts,
            @ForAll @IntRange(min = 1, max = 90) int length,
            @ForAll @Size(max = 6) List<@IntRange(max = 500) Integer> outs,
            @ForAll @IntRange(min = 1, max = 60) int out) {
        List<Stretch> some = new ArrayList<>();
        BitSet left = new BitSet();
        for (int start : starts) {
            some.add(minutes(start, start + length));
            left.set(start, start + length);
        }
        List<Stretch> gone = new ArrayList<>();
        for (int start : outs) {
            gone.add(minutes(start, start + out));
            left.clear(start, start + out);
        }
        BitSet again = new BitSet();
        Instant last = Instant.MIN;
        for (Stretch one : Stretch.without(Stretch.merged(some), gone)) {
            assertThat(one.from()).isAfterOrEqualTo(last);
            last = one.to();
            again.set((int) one.from().getEpochSecond() / 60, (int) one.to().getEpochSecond() / 60);
        }
        assertThat(again).isEqualTo(left);
    }
}
