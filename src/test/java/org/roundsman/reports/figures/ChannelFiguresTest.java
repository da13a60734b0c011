package org.roundsman.reports.figures;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** 95th percentiles of type 7 were worked out with PostgreSQL's percentile_cont; the one of twenty also by hand. */
class ChannelFiguresTest {

    private static final double[] TEN =
            IntStream.rangeClosed(1, 10).asDoubleStream().toArray();

    private static final double[] NONE = {};

    @Test
    void percentilesAreThoseOfTheDatabase() {
        assertThat(ChannelFigures.of(TEN, NONE).utilisation()).hasValue(9.55);
        assertThat(ChannelFigures.of(new double[] {50, 15, 40, 20, 35}, NONE).utilisation())
                .hasValue(48);
        // 0.95 x 19 = 18.05: 91 + 0.05 x (97 - 91)
        double[] twenty = {12, 18, 22, 25, 31, 33, 40, 47, 55, 58, 61, 64, 70, 72, 75, 80, 83, 88, 91, 97};
        ChannelFigures figures = ChannelFigures.of(twenty, TEN);
        assertThat(figures.utilisation()).hasValue(91.3);
        assertThat(figures.clients()).hasValue(9.55);
        assertThat(figures.quarters()).isEqualTo(20);
        assertThat(figures.mean()).hasValue(56.1);
    }

    @Test
    void oneFigureIsEveryPercentile() {
        assertThat(ChannelFigures.of(new double[] {42}, NONE).utilisation()).hasValue(42);
    }

    @Test
    void withoutFiguresThereIsNone() {
        ChannelFigures figures = ChannelFigures.of(NONE, new double[] {3});
        assertThat(figures.utilisation()).isEmpty();
        assertThat(figures.mean()).isEmpty();
        assertThat(figures.busy()).isEqualTo(Duration.ZERO);
        assertThat(figures.quarters()).isZero();
        assertThat(figures.clients()).hasValue(3);
    }

    @Test
    void busyIsOverSeventyPerCentAndNotSeventy() {
        assertThat(ChannelFigures.of(new double[] {70, 70.01, 69.99, 100}, NONE).busy())
                .isEqualTo(Duration.ofMinutes(30));
    }

    @Test
    void theOrderOfTheFiguresDoesNotShow() {
        double[] up = IntStream.range(0, 2976).mapToDouble(n -> n / 29.77).toArray();
        double[] down = IntStream.range(0, 2976).mapToDouble(n -> up[2975 - n]).toArray();
        assertThat(ChannelFigures.of(down, down)).isEqualTo(ChannelFigures.of(up, up));
    }
}
