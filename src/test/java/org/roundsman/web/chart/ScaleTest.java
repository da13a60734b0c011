package org.roundsman.web.chart;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class ScaleTest {

    @Test
    void axesBeginAtZeroAndHaveRoundNumbers() {
        assertThat(Scale.of(3, 47, 100).lines()).containsExactly(0.0, 25.0, 50.0, 75.0, 100.0);
        assertThat(Scale.of(0, 23, 5).lines()).containsExactly(0.0, 10.0, 20.0, 30.0);
    }

    @Test
    void noiseHasAnAxisOfItsOwnBelowZero() {
        Scale scale = Scale.of(-95, -88, 0);
        assertThat(scale.low()).isLessThanOrEqualTo(-95);
        assertThat(scale.high()).isBetween(-88.0, 0.0);
    }

    @Test
    void nothingAtAllStillHasAnAxis() {
        assertThat(Scale.of(0, 0, 0).lines()).hasSizeGreaterThan(1);
    }

    @Property
    void everyFigureLiesOnTheAxis(
            @ForAll @DoubleRange(min = -120, max = 1e9) double one,
            @ForAll @DoubleRange(min = -120, max = 1e9) double other) {
        double least = Math.min(one, other);
        double most = Math.max(one, other);
        Scale scale = Scale.of(least, most, 0);
        double slack = (scale.high() - scale.low()) * 1e-6;
        assertThat(scale.low()).isLessThanOrEqualTo(least + slack);
        assertThat(scale.high()).isGreaterThanOrEqualTo(most - slack);
        assertThat(scale.lines()).hasSizeBetween(2, 8);
    }
}
