package org.roundsman.readings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PercentilesTest {

    private static final double[] U20 = {12, 18, 22, 25, 31, 33, 40, 47, 55, 58, 61, 64, 70, 72, 75, 80, 83, 88, 91, 97
    };
    /** The gauge example of the NIST/SEMATECH handbook, 7.2.6.2. */
    private static final double[] G12 = {
        95.1772, 95.1567, 95.1937, 95.1959, 95.1442, 95.0610, 95.1591, 95.1195, 95.1065, 95.0925, 95.1990, 95.1682
    };

    private static double[] data(String name) {
        return switch (name) {
            case "1..10" -> new double[] {10, 2, 3, 4, 5, 6, 7, 8, 9, 1};
            case "five" -> new double[] {15, 20, 35, 40, 50};
            case "U20" -> U20;
            case "G12" -> G12;
            default -> new double[] {42};
        };
    }

    /** Expected values as percentile_cont of PostgreSQL 15 gives them (type 7 of Hyndman and Fan, 1996). */
    @ParameterizedTest
    @CsvSource({
        "1..10, 0.05, 1.45",
        "1..10, 0.25, 3.25",
        "1..10, 0.5, 5.5",
        "1..10, 0.75, 7.75",
        "1..10, 0.9, 9.1",
        "1..10, 0.95, 9.55",
        "1..10, 0.99, 9.91",
        "five, 0.05, 16",
        "five, 0.3, 23",
        "five, 0.4, 29",
        "five, 0.5, 35",
        "five, 0.95, 48",
        "U20, 0.25, 32.5",
        "U20, 0.5, 59.5",
        "U20, 0.9, 88.3",
        "U20, 0.95, 91.3",
        "U20, 0.99, 95.86",
        "G12, 0.9, 95.19568",
        "G12, 0.5, 95.1579",
        "one, 0, 42",
        "one, 0.7, 42",
        "U20, 0, 12",
        "U20, 1, 97"
    })
    void agreesWithPublishedValues(String name, double p, double expected) {
        assertThat(Percentiles.type7(data(name), p)).isCloseTo(expected, within(1e-9));
    }

    @ParameterizedTest
    @CsvSource({"-0.01", "1.01", "NaN"})
    void aShareOutsideZeroToOneIsRefused(double p) {
        assertThatThrownBy(() -> Percentiles.type7(U20, p)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Percentiles.type7(new double[0], 0.5)).isInstanceOf(IllegalArgumentException.class);
    }
}
