package org.roundsman.reports;

import com.fasterxml.jackson.annotation.JsonIgnore;
import java.time.Duration;
import java.util.OptionalDouble;

/**
 * How access points stood within a stretch of time: the times of all of them added up. The five parts add up to the length
 * exactly. Availability is answering / (answering + silent); planned work and time in which we were not looking leave both sides
 * and stand beside it.
 *
 * @param length access points times the length of the stretch, each from the moment that it was in the fleet
 * @param answering outside planned work
 * @param silent outside planned work
 * @param refusing outside planned work: switched on and reachable, but rejected our credentials
 * @param planned work that was planned, watched or not
 * @param unwatched the rest: we were not looking
 */
public record Watch(
        Duration length, Duration answering, Duration silent, Duration refusing, Duration planned, Duration unwatched) {

    public static final Watch NONE =
            new Watch(Duration.ZERO, Duration.ZERO, Duration.ZERO, Duration.ZERO, Duration.ZERO, Duration.ZERO);

    public Watch {
        Duration parts = answering.plus(silent).plus(refusing).plus(planned).plus(unwatched);
        if (!parts.equals(length)) {
            throw new IllegalArgumentException("the parts make " + parts + " of " + length);
        }
    }

    public Watch plus(Watch other) {
        return new Watch(
                length.plus(other.length),
                answering.plus(other.answering),
                silent.plus(other.silent),
                refusing.plus(other.refusing),
                planned.plus(other.planned),
                unwatched.plus(other.unwatched));
    }

    /** Availability, 0 to 1; empty when nothing answered and nothing was silent. */
    @JsonIgnore
    public OptionalDouble share() {
        double both = answering.plus(silent).toMillis();
        return both == 0 ? OptionalDouble.empty() : OptionalDouble.of(answering.toMillis() / both);
    }

    /** Share of the time outside planned work in which we were looking, 0 to 1; empty when there was no such time. */
    @JsonIgnore
    public OptionalDouble coverage() {
        double counted = length.minus(planned).toMillis();
        return counted == 0 ? OptionalDouble.empty() : OptionalDouble.of(1 - unwatched.toMillis() / counted);
    }
}
