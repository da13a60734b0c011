package org.roundsman.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.roundsman.demo.HistorySink.DeviceQuarter;
import org.roundsman.demo.HistorySink.PastSpan;
import org.roundsman.measure.Condition;
import org.roundsman.measure.Metric;

class HistoryTest {

    private static final Instant START = Instant.parse("2026-11-25T10:07:00Z");
    private static final Instant FROM = Instant.parse("2026-08-26T10:00:00Z");

    private final DemoFleet fleet = DemoFleet.of(250, 3);
    private final History history = new History(fleet);

    /** Keeps what a test looks at, and no more: 13 weeks are millions of rows. */
    private static final class Kept implements HistorySink, HistoryProgress {
        final List<PastSpan> spans = new ArrayList<>();
        final Map<Integer, Integer> quarters = new HashMap<>();
        final List<LocalDate> order = new ArrayList<>();
        final Set<LocalDate> finished = new HashSet<>();
        Instant first = Instant.MAX;
        Instant last = Instant.MIN;
        int stopAfter = Integer.MAX_VALUE;

        @Override
        public void load(List<DeviceQuarter> some, List<PastSpan> someSpans) {
            spans.addAll(someSpans);
            for (DeviceQuarter quarter : some) {
                assertThat(quarter.at().getEpochSecond() % 900).isZero();
                assertThat(quarter.samples()).isBetween(1, 3);
                quarters.merge(quarter.device(), 1, Integer::sum);
                first = quarter.at().isBefore(first) ? quarter.at() : first;
                last = quarter.at().isAfter(last) ? quarter.at() : last;
            }
        }

        @Override
        public Set<LocalDate> finished() {
            return Set.copyOf(finished);
        }

        @Override
        public void finish(LocalDate day) {
            order.add(day);
            finished.add(day);
            if (order.size() == stopAfter) {
                Thread.currentThread().interrupt();
            }
        }
    }

    @Test
    void isCutShortAndGoesOnWithTheDaysThatAreMissing() {
        Kept kept = new Kept();
        kept.stopAfter = 2;
        assertThat(history.fill(START, kept, kept)).isEqualTo(2);
        assertThat(Thread.interrupted()).isTrue();
        assertThat(kept.order).containsExactly(LocalDate.parse("2026-11-25"), LocalDate.parse("2026-11-24"));
        assertThat(kept.last).isEqualTo(Instant.parse("2026-11-25T09:45:00Z"));

        Kept rest = new Kept();
        rest.finished.addAll(kept.finished);
        assertThat(history.fill(START.plus(Duration.ofMinutes(1)), rest, rest)).isEqualTo(90);
        assertThat(rest.order).startsWith(LocalDate.parse("2026-11-23")).endsWith(LocalDate.parse("2026-08-26"));
        assertThat(rest.first).isEqualTo(FROM);
        assertThat(history.fill(START, rest, rest)).isZero();
        rest.quarters.forEach(
                (device, count) -> assertThat(count + kept.quarters.get(device)).isBetween(80 * 96, 91 * 96));
    }

    @Test
    void spansOfADeviceTouchAndReachFromThirteenWeeksAgoToTheFirstStart() {
        Kept kept = new Kept();
        history.fillSpans(START.plusNanos(250_000), kept, kept);
        Map<Integer, Instant> reached = new HashMap<>();
        for (PastSpan span : kept.spans) {
            assertThat(span.from()).isEqualTo(reached.getOrDefault(span.device(), FROM));
            assertThat(Duration.between(span.from(), span.to())).isGreaterThanOrEqualTo(Duration.ofMillis(1));
            reached.put(span.device(), span.to());
        }
        assertThat(reached).hasSize(fleet.devices().size());
        assertThat(reached.values()).containsOnly(START);
    }

    @Test
    void showsFaultsOfThePast() {
        Kept kept = new Kept();
        kept.stopAfter = 1;
        history.fillSpans(START, kept, kept);
        history.fill(START, kept, kept);
        Thread.interrupted();
        assertThat(kept.spans)
                .filteredOn(s -> s.condition() == Condition.SILENT)
                .hasSizeGreaterThan(500)
                .allSatisfy(s ->
                        assertThat(Duration.between(s.from(), s.to())).isGreaterThanOrEqualTo(Duration.ofMinutes(3)));
        Set<Integer> wrong = new HashSet<>();
        kept.spans.stream().filter(s -> s.condition() == Condition.REFUSING).forEach(s -> wrong.add(s.device()));
        assertThat(wrong).hasSize(1).allSatisfy(number -> {
            assertThat(fleet.devices().get(number).standing()).contains(Fault.CREDENTIAL_WRONG);
            assertThat(kept.quarters).doesNotContainKey(number);
        });
    }

    @Test
    void whatIsMissingStaysMissing() {
        DemoDevice dark = fleet.devices().stream()
                .filter(d -> d.standing().contains(Fault.RADIO_OFF))
                .findFirst()
                .orElseThrow();
        HistorySink look = (quarters, spans) -> quarters.forEach(quarter -> {
            boolean accessPoint = fleet.devices().get(quarter.device()).isAccessPoint();
            assertThat(quarter.figures().has(Metric.CLIENTS)).isEqualTo(accessPoint);
            assertThat(quarter.figures().has(Metric.ROUND_TRIP)).isFalse();
            if (quarter.device() == dark.number()) {
                assertThat(quarter.radios().get(0).mean().has(Metric.UTILISATION))
                        .isFalse();
                assertThat(quarter.radios().get(0).mean().has(Metric.RETRIES)).isFalse();
                assertThat(quarter.radios().get(1).mean().has(Metric.UTILISATION))
                        .isTrue();
            }
        });
        Kept progress = new Kept();
        progress.stopAfter = 1;
        assertThat(history.fill(START, look, progress)).isEqualTo(1);
        Thread.interrupted();
    }
}
