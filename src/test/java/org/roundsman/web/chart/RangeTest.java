package org.roundsman.web.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;

class RangeTest {

    private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");

    @Test
    void theLastStepHoldsThePresentMoment() {
        Window window = Range.DAY.window(Instant.parse("2026-03-04T10:07:00Z"), BERLIN);
        assertThat(window.to()).isEqualTo(Instant.parse("2026-03-04T10:15:00Z"));
        assertThat(Duration.between(window.from(), window.to())).isEqualTo(Duration.ofDays(1));
        Window onTheDot = Range.DAY.window(Instant.parse("2026-03-04T10:15:00Z"), BERLIN);
        assertThat(onTheDot.to()).isEqualTo(Instant.parse("2026-03-04T10:30:00Z"));
    }

    /** Clocks go forward on 29 March 2026 at 02:00 in Berlin (IANA time zone database): that day has 23 hours. */
    @Test
    void labelsFollowTheClockOnTheWall() {
        Window window = Range.DAY.window(Instant.parse("2026-03-29T20:00:00Z"), BERLIN);
        assertThat(Range.DAY.ticks(window))
                .extracting(Range.Tick::text)
                .containsExactly("00:00", "06:00", "12:00", "18:00");
        assertThat(Range.DAY.ticks(window).get(1).at()).isEqualTo(Instant.parse("2026-03-29T04:00:00Z"));
    }

    @Test
    void aWeekIsLabelledByItsDays() {
        Window window = Range.WEEK.window(Instant.parse("2026-03-04T10:07:00Z"), BERLIN);
        assertThat(Range.WEEK.ticks(window))
                .extracting(Range.Tick::text)
                .containsExactly("Thu", "Fri", "Sat", "Sun", "Mon", "Tue", "Wed");
    }

    @Test
    void anUnknownWordMeansADay() {
        assertThat(Range.of("century")).isEqualTo(Range.DAY);
        assertThat(Range.of("month")).isEqualTo(Range.MONTH);
    }
}
