package org.roundsman.reports.figures;

import java.time.Duration;
import java.util.Arrays;
import java.util.OptionalDouble;
import org.roundsman.readings.Percentiles;
import org.roundsman.reports.RadioFigures;

/**
 * What the quarter hours of one radio say, rounded. The parts mean what they mean in {@link RadioFigures}.
 *
 * @param quarters quarter hours with a utilisation
 */
record ChannelFigures(
        OptionalDouble utilisation, OptionalDouble mean, Duration busy, int quarters, OptionalDouble clients) {

    static final Duration QUARTER = Duration.ofMinutes(15);

    static final ChannelFigures NONE = of(new double[0], new double[0]);

    private static final double SHARE = 0.95;

    /**
     * @param utilisation 15-minute means in percent, in any order
     * @param clients 15-minute means, in any order
     */
    static ChannelFigures of(double[] utilisation, double[] clients) {
        // put in order first: then their sum is the same whatever order the database gave them in
        double[] sorted = utilisation.clone();
        Arrays.sort(sorted);
        long over = Arrays.stream(sorted)
                .filter(figure -> figure > RadioFigures.BUSY)
                .count();
        return new ChannelFigures(
                percentile(sorted),
                rounded(Arrays.stream(sorted).average()),
                QUARTER.multipliedBy(over),
                sorted.length,
                percentile(clients));
    }

    private static OptionalDouble percentile(double[] figures) {
        return figures.length == 0
                ? OptionalDouble.empty()
                : rounded(OptionalDouble.of(Percentiles.type7(figures, SHARE)));
    }

    private static OptionalDouble rounded(OptionalDouble figure) {
        return figure.isEmpty() ? figure : OptionalDouble.of(Rounding.of(figure.getAsDouble()));
    }
}
