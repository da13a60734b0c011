package org.roundsman.planned;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.roundsman.planned.Occurrence.Turn;

/** What a preview says of a night on which the clock is turned; transitions as in {@link TimingTest}. */
class OccurrenceTest {

    @ParameterizedTest
    @CsvSource({
        "Europe/Berlin, 2026-03-28, 02:30, NONE",
        "Europe/Berlin, 2026-03-28, 23:00, DURING",
        "Europe/Berlin, 2026-03-29, 02:30, START_SKIPPED",
        "Europe/Berlin, 2026-03-29, 01:30, DURING",
        "Europe/Berlin, 2026-03-29, 03:00, THAT_DAY",
        "Europe/Berlin, 2026-03-30, 02:30, NONE",
        "Europe/Berlin, 2026-10-25, 02:30, START_TWICE",
        "Europe/Berlin, 2026-10-25, 01:00, DURING",
        "Europe/Berlin, 2026-10-25, 12:00, THAT_DAY",
        "America/New_York, 2026-03-08, 02:00, START_SKIPPED",
        "America/New_York, 2026-11-01, 01:00, START_TWICE",
        "America/New_York, 2026-11-01, 00:30, DURING",
        "Asia/Kolkata, 2026-03-29, 02:30, NONE"
    })
    void aTurnOfTheClockIsMarked(String zone, String day, String start, Turn expected) {
        Timing timing = Timing.Repeating.of(
                new Repetition.Daily(),
                LocalTime.parse(start),
                Duration.ofHours(4),
                LocalDate.parse(day),
                null,
                List.of());
        assertThat(Occurrence.next(timing, Instant.parse("2026-01-01T00:00:00Z"), ZoneId.of(zone), 1))
                .extracting(Occurrence::turn)
                .containsExactly(expected);
    }
}
