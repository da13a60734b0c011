package org.roundsman.reports.figures;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Figures of reports have four decimals, so that the same data gives the same report to the last digit. */
final class Rounding {

    private static final int DECIMALS = 4;

    private Rounding() {}

    /**
     * Halves go away from zero.
     *
     * @param figure neither infinite nor NaN
     */
    static double of(double figure) {
        return BigDecimal.valueOf(figure)
                .setScale(DECIMALS, RoundingMode.HALF_UP)
                .doubleValue();
    }
}
