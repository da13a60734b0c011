package org.roundsman.web.chart;

import java.util.ArrayList;
import java.util.List;

/**
 * The upright axis of a chart: round numbers that hold all figures.
 *
 * @param low figure at the bottom
 * @param high figure at the top
 * @param step distance of the lines
 */
record Scale(double low, double high, double step) {

    private static final double[] ROUND = {1, 2, 2.5, 5, 10};
    private static final int LINES = 4;

    /** From zero to above the highest figure; from below the least one when that is negative. */
    static Scale of(double least, double most, double leastTop) {
        double bottom = Math.min(0, least);
        double top = least < 0 ? most : Math.max(most, leastTop);
        double step = roundUp(Math.max(top - bottom, 1e-9) / LINES);
        return new Scale(Math.floor(bottom / step) * step, Math.ceil(top / step - 1e-9) * step, step).apart();
    }

    private Scale apart() {
        return high > low ? this : new Scale(low, low + step, step);
    }

    private static double roundUp(double raw) {
        double power = Math.pow(10, Math.floor(Math.log10(raw)));
        for (double round : ROUND) {
            if (raw <= round * power * (1 + 1e-9)) {
                return round * power;
            }
        }
        return 10 * power;
    }

    /** Share of the height at which the figure lies, 0 to 1. */
    double at(double figure) {
        return Math.max(0, Math.min(1, (figure - low) / (high - low)));
    }

    List<Double> lines() {
        List<Double> lines = new ArrayList<>();
        int count = (int) Math.round((high - low) / step);
        for (int i = 0; i <= count; i++) {
            lines.add(low + i * step);
        }
        return lines;
    }
}
