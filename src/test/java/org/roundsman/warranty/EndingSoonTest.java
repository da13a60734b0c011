package org.roundsman.warranty;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.roundsman.alarms.Severity;
import org.roundsman.alarms.Signal;
import org.roundsman.rules.RuleSet;

/** When warranties raise an alarm, and when it clears. */
class EndingSoonTest {

    private static final Instant NOW = Instant.parse("2026-11-26T12:00:00Z");
    private static final RuleSet RULES = RuleSet.shipped();

    private static UnitCover unit(long device, long site, String last) {
        return Invented.ending(device, site, last, "2026-11-26", null);
    }

    @Test
    void oneAlarmASiteNamesTheDays() {
        List<Signal> signals = EndingSoon.signals(
                List.of(
                        unit(1, 5, "2026-12-20"),
                        unit(2, 5, "2026-12-10"),
                        unit(3, 5, "2026-12-10"),
                        unit(4, 5, "2026-12-27"),
                        unit(5, 6, "2026-12-26"),
                        unit(6, 7, "2026-11-25")),
                RULES,
                Set.of(),
                NOW);
        assertThat(signals).extracting(signal -> signal.key().resource().id()).containsExactly(5L, 6L);
        assertThat(signals.get(0).text()).isEqualTo("3 access points: 2 on 2026-12-10, 1 on 2026-12-20");
        assertThat(signals.get(1).text()).isEqualTo("1 access point on 2026-12-26");
        Signal.Raise first = (Signal.Raise) signals.get(0);
        assertThat(first.severity()).isEqualTo(Severity.WARNING);
        assertThat(first.began()).as("30 days before, at midnight in Berlin").isEqualTo("2026-11-09T23:00:00Z");
    }

    @Test
    void itClearsWhenNoneIsLeft() {
        List<Signal> signals = EndingSoon.signals(List.of(unit(1, 5, "2027-12-20")), RULES, Set.of(5L, 9L), NOW);
        assertThat(signals)
                .allMatch(Signal.Clear.class::isInstance)
                .extracting(signal -> signal.key().resource().id())
                .containsExactly(5L, 9L);
    }

    @Test
    void manyDaysAreCutShort() {
        List<UnitCover> many = java.util.stream.IntStream.rangeClosed(1, 12)
                .mapToObj(day -> unit(day, 5, "2026-12-" + (day + 10)))
                .toList();
        assertThat(EndingSoon.signals(many, RULES, Set.of(), NOW).get(0).text())
                .startsWith("12 access points: 1 on 2026-12-11")
                .endsWith("1 on 2026-12-18, 4 later");
    }
}
