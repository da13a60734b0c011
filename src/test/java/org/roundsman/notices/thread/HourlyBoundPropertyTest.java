package org.roundsman.notices.thread;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;

/** However messages come: never more than the bound in any hour, and each message goes out exactly once, alone or summed. */
class HourlyBoundPropertyTest {

    private static final Instant START = Instant.parse("2026-03-04T11:00:00Z");

    @Property(tries = 400)
    void neverMoreThanTheBoundInAnyHourAndNothingIsLost(
            @ForAll @Size(max = 60) List<@IntRange(min = 0, max = 40) Integer> minutesBetween,
            @ForAll @IntRange(min = 2, max = 15) int most) {
        HourlyBound bound = new HourlyBound(most, Duration.ofMinutes(2));
        List<HourlyBound.Due> waiting = new ArrayList<>();
        List<Instant> out = new ArrayList<>();
        Set<Long> told = new HashSet<>();
        Instant now = START;
        long id = 0;
        for (int minutes : minutesBetween) {
            waiting.add(new HourlyBound.Due(++id, now, true, id % 7 != 0));
            for (int m = 0; m <= minutes; m++) {
                pass(bound, waiting, out, told, now.plusSeconds(m * 60L));
            }
            now = now.plusSeconds(minutes * 60L);
        }
        for (int m = 0; m < 60 * 60; m += 2) {
            pass(bound, waiting, out, told, now.plusSeconds(m * 60L));
        }
        assertThat(told).hasSize((int) id);
        for (int i = most; i < out.size(); i++) {
            assertThat(Duration.between(out.get(i - most), out.get(i))).isGreaterThanOrEqualTo(HourlyBound.HOUR);
        }
    }

    private static void pass(
            HourlyBound bound, List<HourlyBound.Due> waiting, List<Instant> out, Set<Long> told, Instant now) {
        int used = (int) out.stream()
                .filter(at -> at.isAfter(now.minus(HourlyBound.HOUR)))
                .count();
        HourlyBound.Share share = bound.share(waiting, used, now);
        for (long one : share.send()) {
            assertThat(told.add(one)).isTrue();
            out.add(now);
        }
        if (!share.sum().isEmpty()) {
            assertThat(share.sum()).hasSizeGreaterThan(1);
            share.sum().forEach(one -> assertThat(told.add(one)).isTrue());
            out.add(now);
        }
        waiting.removeIf(one -> told.contains(one.id()));
    }
}
