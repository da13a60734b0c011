package org.roundsman.readings;

import java.util.Arrays;

/** Percentiles by linear interpolation: type 7 of Hyndman and Fan (1996), the same as PostgreSQL's percentile_cont. */
public final class Percentiles {

    private Percentiles() {}

    /**
     * The value below which the share {@code p} of the figures lies.
     *
     * @param figures in any order, at least one, none NaN; left as they are
     * @param p 0 to 1
     * @throws IllegalArgumentException without figures or with a share outside 0 to 1
     */
    public static double type7(double[] figures, double p) {
        if (figures.length == 0) {
            throw new IllegalArgumentException("no figures");
        }
        if (!(p >= 0 && p <= 1)) {
            throw new IllegalArgumentException("a share of " + p);
        }
        double[] sorted = figures.clone();
        Arrays.sort(sorted);
        double position = p * (sorted.length - 1);
        int below = (int) position;
        if (below == sorted.length - 1) {
            return sorted[below];
        }
        return sorted[below] + (position - below) * (sorted[below + 1] - sorted[below]);
    }
}
