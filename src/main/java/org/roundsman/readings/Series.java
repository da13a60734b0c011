package org.roundsman.readings;

import java.time.Instant;
import java.util.List;
import org.roundsman.measure.Metric;

/**
 * One metric over time, from roll-ups.
 *
 * @param metric what it is of
 * @param stepSeconds width of a point's bucket
 * @param points ascending, without those where nothing was measured
 */
public record Series(Metric metric, int stepSeconds, List<Point> points) {

    public Series {
        points = List.copyOf(points);
    }

    /**
     * One bucket.
     *
     * @param at its start
     * @param count raw readings in it, at least 1
     */
    public record Point(Instant at, int count, double min, double mean, double max) {}
}
