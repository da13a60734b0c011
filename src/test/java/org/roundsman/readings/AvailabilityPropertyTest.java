package org.roundsman.readings;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.roundsman.measure.Condition;
import org.roundsman.planned.Stretch;

/** Every moment of a period stands in one place, whatever the spans and the windows: checked minute by minute. */
class AvailabilityPropertyTest {

    private static final Instant START = Instant.parse("2026-03-28T12:00:00Z");

    private static Instant minute(int minute) {
        return START.plusSeconds(minute * 60L);
    }

    @Property(tries = 500)
    void thePartsMakeTheWhole(
            @ForAll @Size(max = 10) List<@IntRange(min = 1, max = 200) Integer> lengths,
            @ForAll @IntRange(max = 3) int turn,
            @ForAll boolean goesOn,
            @ForAll @Size(max = 6) List<@IntRange(min = -100, max = 1_100) Integer> works,
            @ForAll @IntRange(min = 1, max = 300) int work,
            @ForAll @IntRange(max = 400) int from,
            @ForAll @IntRange(max = 1_200) int length) {
        List<Span> spans = new ArrayList<>();
        int at = 0;
        for (int i = 0; i < lengths.size(); i++) {
            boolean open = goesOn && i == lengths.size() - 1;
            Condition condition = Condition.values()[(i + turn) % Condition.values().length];
            spans.add(new Span(
                    minute(at),
                    open ? Optional.empty() : Optional.of(minute(at + lengths.get(i))),
                    condition,
                    Optional.empty()));
            at += lengths.get(i);
        }
        List<Stretch> planned = works.stream()
                .map(begin -> new Stretch(minute(begin), minute(begin + work)))
                .toList();
        Availability sums = Availability.of(spans, minute(from), minute(from + length), minute(at), planned);
        assertThat(sums.answering()
                        .plus(sums.silent())
                        .plus(sums.refusing())
                        .plus(sums.unwatched())
                        .plus(sums.planned()))
                .isEqualTo(sums.period());
        assertThat(sums.unwatched()).isGreaterThanOrEqualTo(Duration.ZERO);
        assertThat(sums.answering()).isEqualTo(counted(spans, Condition.ANSWERING, planned, from, length, at));
        assertThat(sums.silent()).isEqualTo(counted(spans, Condition.SILENT, planned, from, length, at));
        assertThat(sums.refusing()).isEqualTo(counted(spans, Condition.REFUSING, planned, from, length, at));
        sums.share().ifPresent(share -> assertThat(share).isBetween(0.0, 1.0));
        sums.coverage().ifPresent(share -> assertThat(share).isBetween(0.0, 1.0));
    }

    private static Duration counted(
            List<Span> spans, Condition condition, List<Stretch> planned, int from, int length, int known) {
        int minutes = 0;
        for (int i = from; i < from + length; i++) {
            Instant moment = minute(i);
            boolean in = spans.stream()
                    .anyMatch(span -> span.condition() == condition
                            && !moment.isBefore(span.from())
                            && moment.isBefore(span.to().orElse(minute(known))));
            minutes += in && planned.stream().noneMatch(work -> work.covers(moment)) ? 1 : 0;
        }
        return Duration.ofMinutes(minutes);
    }
}
