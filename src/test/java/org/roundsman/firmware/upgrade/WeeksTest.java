package org.roundsman.firmware.upgrade;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.roundsman.firmware.FigureChange;
import org.roundsman.firmware.FigureChange.Figure;
import org.roundsman.firmware.FigureChange.Outcome;
import org.roundsman.firmware.store.ChangeTable.Open;

class WeeksTest {

    private static final Instant CHANGE = Instant.parse("2026-10-22T02:00:00Z");
    private static final ZoneId UTC = ZoneId.of("UTC");

    private static Open open(Optional<Instant> before, Optional<Instant> next) {
        return new Open(1, 1, UTC, CHANGE, Optional.of(CHANGE.minusSeconds(60)), before, next);
    }

    /** By day there are ten clients, by night none: a mean over unlike hours would show a difference that is none. */
    private static double usual(Instant at, ZoneId zone) {
        int hour = at.atZone(zone).getHour();
        return hour >= 8 && hour < 18 ? 10 : 0;
    }

    private static Map<Instant, Double> values(Instant from, Instant to, ZoneId zone, double more) {
        Map<Instant, Double> values = new HashMap<>();
        for (Instant at = from; at.isBefore(to); at = at.plus(Duration.ofMinutes(15))) {
            values.put(at, usual(at, zone) + (at.isAfter(CHANGE) ? more : 0));
        }
        return values;
    }

    @Test
    void theSameHoursOfTheWeekAreCompared() {
        Weeks weeks = Weeks.around(open(Optional.empty(), Optional.empty()));
        Map<Instant, Double> values = values(CHANGE.minus(Duration.ofDays(9)), CHANGE.plus(Duration.ofDays(3)), UTC, 0);
        FigureChange change = weeks.compare(Figure.CLIENTS, values, UTC).orElseThrow();
        assertThat(change.before()).isEqualTo(change.after());
        assertThat(change.outcome()).isEqualTo(Outcome.AS_BEFORE);
        assertThat(change.quarters()).isEqualTo(3 * 96 - 1);
        assertThat(change.thin()).isTrue();
    }

    @Test
    void aWholeWeekIsNearlyAllOfItsQuarterHours() {
        Weeks weeks = Weeks.around(open(Optional.empty(), Optional.empty()));
        Map<Instant, Double> values = values(CHANGE.minus(Duration.ofDays(9)), CHANGE.plus(Duration.ofDays(9)), UTC, 5);
        FigureChange change = weeks.compare(Figure.CLIENTS, values, UTC).orElseThrow();
        assertThat(change.quarters()).isBetween(660, 672);
        assertThat(change.after() - change.before()).isCloseTo(5.0, org.assertj.core.data.Offset.offset(1e-9));
        assertThat(change.outcome()).isEqualTo(Outcome.HIGHER);
        assertThat(change.thin()).isFalse();
    }

    /** Berlin turned its clocks back on 2026-10-25 (check values, 6): the week after is an hour longer. */
    @Test
    void theClockOfTheSiteCountsAlsoWhenItIsTurned() {
        ZoneId berlin = ZoneId.of("Europe/Berlin");
        Weeks weeks = Weeks.around(open(Optional.empty(), Optional.empty()));
        Map<Instant, Double> values =
                values(CHANGE.minus(Duration.ofDays(9)), CHANGE.plus(Duration.ofDays(9)), berlin, 0);
        FigureChange change = weeks.compare(Figure.CLIENTS, values, berlin).orElseThrow();
        assertThat(change.before()).isEqualTo(change.after());
    }

    @Test
    void anotherChangeCutsTheWeekSoThatEachIsOfOneVersion() {
        Weeks weeks = Weeks.around(
                open(Optional.of(CHANGE.minus(Duration.ofDays(1))), Optional.of(CHANGE.plus(Duration.ofDays(8)))));
        assertThat(weeks.from()).isEqualTo(CHANGE.minus(Duration.ofDays(1)));
        assertThat(weeks.to()).isEqualTo(CHANGE.plus(Duration.ofDays(7)).plus(Duration.ofMinutes(15)));
        Weeks short1 = Weeks.around(open(Optional.empty(), Optional.of(CHANGE.plusSeconds(600))));
        assertThat(short1.to()).isEqualTo(CHANGE.plusSeconds(600));
    }

    /** Our own bounds: a fifth of the figure before, or one client, two points of retries, five of utilisation. */
    @ParameterizedTest
    @CsvSource({
        "CLIENTS, 2, 3, 600, AS_BEFORE",
        "CLIENTS, 2, 3.1, 600, HIGHER",
        "CLIENTS, 20, 24, 600, AS_BEFORE",
        "CLIENTS, 20, 15, 600, LOWER",
        "RETRIES, 4, 6, 600, AS_BEFORE",
        "RETRIES, 4, 6.1, 600, HIGHER",
        "UTILISATION, 40, 48, 600, AS_BEFORE",
        "UTILISATION, 40, 31, 600, LOWER",
        "CLIENTS, 2, 30, 95, TOO_LITTLE"
    })
    void aDifferenceCountsBeyondItsBound(Figure figure, double before, double after, int quarters, Outcome outcome) {
        assertThat(new FigureChange(figure, before, after, quarters).outcome()).isEqualTo(outcome);
    }
}
