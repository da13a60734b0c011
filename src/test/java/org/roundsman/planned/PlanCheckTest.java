package org.roundsman.planned;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a window may be; the bounds are our own. */
class PlanCheckTest {

    private static final Instant NOW = Instant.parse("2026-06-01T10:00:00Z");
    private static final List<ZoneId> ZONES = List.of(ZoneId.of("Europe/Berlin"));

    private static Map<String, String> faults(String title, Timing timing) {
        PlanDraft draft = new PlanDraft(new PlanDraft.Where(Reach.SITE, 1), title, "", timing);
        return PlanCheck.faults(draft, ZONES, NOW, Optional.empty());
    }

    private static Timing once(Duration in, Duration length) {
        return new Timing.Once(new Stretch(NOW.plus(in), NOW.plus(in).plus(length)));
    }

    private static Timing.Repeating repeating(Repetition how, int minutes, String last, String... skipped) {
        return Timing.Repeating.of(
                how,
                LocalTime.of(22, 0),
                Duration.ofMinutes(minutes),
                LocalDate.parse("2026-06-01"),
                last == null ? null : LocalDate.parse(last),
                java.util.Arrays.stream(skipped).map(LocalDate::parse).toList());
    }

    @ParameterizedTest
    @CsvSource({
        "PT0S, PT5M, ''",
        "PT0S, P14D, ''",
        "PT0S, PT4M59S, to",
        "PT0S, P14DT1S, to",
        "P-7D, PT1H, ''",
        "P-8D, PT1H, from",
        "P730D, PT1H, ''",
        "P731D, PT1H, from"
    })
    void onceHasBounds(Duration in, Duration length, String field) {
        assertThat(String.join(",", faults("Work", once(in, length)).keySet())).isEqualTo(field);
    }

    @Test
    void whatHasBegunMayKeepItsBeginning() {
        Timing timing = once(Duration.ofDays(-9), Duration.ofDays(10));
        PlanDraft draft = new PlanDraft(new PlanDraft.Where(Reach.SITE, 1), "Work", "", timing);
        assertThat(PlanCheck.faults(draft, ZONES, NOW, Optional.of(NOW.minus(Duration.ofDays(9)))))
                .isEmpty();
    }

    @Test
    void repetitionsHaveBounds() {
        Repetition daily = new Repetition.Daily();
        Repetition sundays = new Repetition.Weekly(Set.of(DayOfWeek.SUNDAY));
        assertThat(faults("Work", repeating(daily, 1_380, null))).isEmpty();
        assertThat(faults("Work", repeating(daily, 1_381, null))).containsOnlyKeys("length");
        assertThat(faults("Work", repeating(sundays, 4_320, null))).isEmpty();
        assertThat(faults("Work", repeating(sundays, 4_321, null))).containsOnlyKeys("length");
        assertThat(faults("Work", repeating(daily, 4, null))).containsOnlyKeys("length");
        assertThat(faults("Work", repeating(new Repetition.Weekly(Set.of()), 60, null)))
                .containsOnlyKeys("weekdays");
        assertThat(faults("Work", repeating(new Repetition.MonthDay(32), 60, null)))
                .containsOnlyKeys("day");
        assertThat(faults("Work", repeating(new Repetition.MonthWeekday(5, DayOfWeek.SUNDAY), 60, null)))
                .containsOnlyKeys("which");
    }

    @Test
    void daysMustFitTogether() {
        Repetition sundays = new Repetition.Weekly(Set.of(DayOfWeek.SUNDAY));
        assertThat(faults("Work", repeating(sundays, 60, "2026-05-31"))).containsOnlyKeys("lastDay");
        assertThat(faults("Work", repeating(sundays, 60, "2026-06-06")))
                .containsEntry("lastDay", "with these days nothing is left to come");
        assertThat(faults("Work", repeating(sundays, 60, "2026-06-07", "2026-06-07")))
                .containsOnlyKeys("lastDay");
        assertThat(faults("Work", repeating(sundays, 60, null, "2026-06-08")))
                .containsEntry("skipped", "2026-06-08 is no day of this window");
    }

    @Test
    void everythingThatIsWrongIsSaidAtOnce() {
        assertThat(faults(" ", once(Duration.ofDays(-8), Duration.ofMinutes(1))))
                .containsOnlyKeys("title", "from", "to");
        assertThat(faults("a".repeat(121), null)).containsOnlyKeys("title", "timing");
        assertThat(faults("bell \u0007", once(Duration.ZERO, Duration.ofHours(1))))
                .containsOnlyKeys("title");
    }
}
