package org.roundsman.web.chart;

import java.util.List;
import org.roundsman.readings.Series;
import org.roundsman.readings.Span;

/**
 * What one chart shows.
 *
 * @param key unique on the page
 * @param title what is measured, with whose it is
 * @param unit symbol behind the figures, or empty
 * @param divisor of the stored figure, to reach that unit
 * @param leastTop least figure at the top of the axis, in the unit
 * @param series one or two; the second is drawn dashed
 * @param spans when the device was silent or not watched
 */
public record Chart(
        String key,
        String title,
        String unit,
        double divisor,
        double leastTop,
        List<Series> series,
        Window window,
        List<Span> spans) {

    boolean blank() {
        return series.stream().allMatch(one -> one.points().isEmpty());
    }

    double least() {
        return series.stream()
                        .flatMap(s -> s.points().stream())
                        .mapToDouble(Series.Point::min)
                        .min()
                        .orElse(0)
                / divisor;
    }

    double most() {
        return series.stream()
                        .flatMap(s -> s.points().stream())
                        .mapToDouble(Series.Point::max)
                        .max()
                        .orElse(0)
                / divisor;
    }
}
