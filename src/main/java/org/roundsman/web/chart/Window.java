package org.roundsman.web.chart;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;

/**
 * The time that a chart shows.
 *
 * @param from whole step
 * @param to whole step, exclusive
 * @param zone of the site
 */
public record Window(Instant from, Instant to, Duration step, ZoneId zone, Range range) {

    /** Share of the width at which the moment lies, 0 to 1. */
    double at(Instant moment) {
        double whole = Duration.between(from, to).toMillis();
        return Math.max(0, Math.min(1, Duration.between(from, moment).toMillis() / whole));
    }
}
