package org.roundsman.reports.figures;

import java.time.Duration;
import java.time.Instant;

/**
 * A time in which one access point was silent, cut to the stretch of a report and without planned work.
 *
 * @param to end, exclusive
 * @param begunBefore it was silent before the stretch already
 * @param goesOn it is silent beyond the stretch
 */
public record Silence(long deviceId, Instant from, Instant to, boolean begunBefore, boolean goesOn) {

    public Duration length() {
        return Duration.between(from, to);
    }
}
