package org.roundsman.firmware.upgrade;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.Map;
import java.util.Optional;
import org.roundsman.firmware.FigureChange;
import org.roundsman.firmware.store.ChangeTable.Open;

/**
 * The two weeks around a change, and what they have in common. The hour before the change was read and the quarter hour after
 * it belong to neither week, since the device restarted in them.
 *
 * @param from first moment of the week before
 * @param until its end, exclusive
 * @param again first moment of the week after
 * @param to its end, exclusive
 */
public record Weeks(Instant from, Instant until, Instant again, Instant to) {

    public static final Duration WEEK = Duration.ofDays(7);

    private static final Duration BEFORE = Duration.ofHours(1);
    private static final Duration AFTER = Duration.ofMinutes(15);

    /** Cut short by the changes before and after, so that each week is of one version. */
    public static Weeks around(Open change) {
        Instant restart =
                change.restartedAt().filter(at -> at.isBefore(change.at())).orElse(change.at());
        Instant again = change.at().plus(AFTER);
        Instant from = change.at().minus(WEEK);
        Instant to = again.plus(WEEK);
        return new Weeks(
                change.before().filter(at -> at.isAfter(from)).orElse(from),
                restart.minus(BEFORE),
                again,
                change.next().filter(at -> at.isBefore(to)).orElse(to));
    }

    /**
     * Compares the quarter hours of the week, by the clock of the site, that lie in both weeks and have figures in both.
     *
     * @param values by start of the quarter hour
     * @return empty where there is none
     */
    public Optional<FigureChange> compare(FigureChange.Figure figure, Map<Instant, Double> values, ZoneId zone) {
        double before = 0;
        double after = 0;
        int pairs = 0;
        for (Map.Entry<Instant, Double> value : values.entrySet()) {
            Instant at = value.getKey();
            if (at.isBefore(again) || !at.isBefore(to)) {
                continue;
            }
            Instant partner = weekBefore(at, zone);
            Double then = partner.isBefore(from) || !partner.isBefore(until) ? null : values.get(partner);
            if (then != null) {
                before += then;
                after += value.getValue();
                pairs++;
            }
        }
        return pairs == 0
                ? Optional.empty()
                : Optional.of(new FigureChange(figure, before / pairs, after / pairs, pairs));
    }

    private static Instant weekBefore(Instant at, ZoneId zone) {
        ZonedDateTime local = at.atZone(zone);
        return local.minusWeeks(1).toInstant();
    }
}
