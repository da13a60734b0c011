package org.roundsman.triage;

import java.time.Duration;
import java.time.YearMonth;
import java.util.OptionalDouble;

/**
 * How a site stands against its availability target in the month that goes on, by its own clock. Only service hours count,
 * without planned work; a site is as available as its access points on average: answering / (answering + silent).
 *
 * @param target in percent
 * @param open service hours so far
 * @param whole service hours of the whole month
 * @param answering time of all access points together in which they answered
 * @param silent time in which they did not
 */
public record MonthSoFar(
        YearMonth month, double target, Duration open, Duration whole, Duration answering, Duration silent) {

    /** 0 to 1; empty when nothing is known. */
    public OptionalDouble share() {
        long both = answering.plus(silent).toMillis();
        return both == 0 ? OptionalDouble.empty() : OptionalDouble.of((double) answering.toMillis() / both);
    }

    /** How long the whole site may be down in the whole month without missing the target. */
    public Duration allowed() {
        return Duration.ofMillis(Math.round(whole.toMillis() * (100 - target) / 100));
    }

    /** How long the whole site would have been down if all silence so far had come at once. */
    public Duration used() {
        OptionalDouble share = share();
        return share.isEmpty()
                ? Duration.ZERO
                : Duration.ofMillis(Math.round(open.toMillis() * (1 - share.getAsDouble())));
    }

    /** What is left of it; negative when the target is missed already. */
    public Duration left() {
        return allowed().minus(used());
    }
}
