package org.roundsman.reports;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** What stands in the cells of a {@link ReportTable}; null is what is not known. */
final class TableCells {

    private TableCells() {}

    /** A row; its values may be null. */
    static List<Object> row(Object... values) {
        return Arrays.asList(values);
    }

    /** With up to three decimals. */
    static BigDecimal seconds(Duration time) {
        BigDecimal seconds = BigDecimal.valueOf(time.toMillis(), 3);
        return seconds.signum() == 0 ? BigDecimal.ZERO : plain(seconds);
    }

    static BigDecimal seconds(Optional<Duration> time) {
        return time.isEmpty() ? null : seconds(time.get());
    }

    /** Per cent of a share from 0 to 1, with up to four decimals. */
    static BigDecimal percent(OptionalDouble share) {
        return share.isEmpty()
                ? null
                : plain(BigDecimal.valueOf(share.getAsDouble() * 100).setScale(4, RoundingMode.HALF_UP));
    }

    private static BigDecimal plain(BigDecimal number) {
        BigDecimal shortest = number.stripTrailingZeros();
        return shortest.scale() < 0 ? shortest.setScale(0) : shortest;
    }

    static Double number(OptionalDouble number) {
        return number.isEmpty() ? null : (Double) number.getAsDouble();
    }

    static String yes(boolean it) {
        return it ? "yes" : "no";
    }

    /** The shares of a {@link Watch}, and its times from answering to unwatched. */
    static List<Object> watch(Watch watch) {
        return row(
                percent(watch.share()),
                percent(watch.coverage()),
                seconds(watch.answering()),
                seconds(watch.silent()),
                seconds(watch.refusing()),
                seconds(watch.planned()),
                seconds(watch.unwatched()));
    }
}
