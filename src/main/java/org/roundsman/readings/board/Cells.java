package org.roundsman.readings.board;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import org.roundsman.readings.Ribbon;
import org.roundsman.readings.spans.Touched;

/** A ribbon while it is read: figures or NaN, and device seconds per cell. */
final class Cells {

    final double[] clients = missing();
    final double[] utilisation = missing();
    final double[] trouble = new double[Ribbon.CELLS];
    final double[] watched = new double[Ribbon.CELLS];
    final double[] covered = new double[Ribbon.CELLS];

    private static double[] missing() {
        double[] figures = new double[Ribbon.CELLS];
        Arrays.fill(figures, Double.NaN);
        return figures;
    }

    /** Adds a watched stretch of time of one device; times in milliseconds, {@code start} that of the first cell. */
    void span(long start, long from, long to, boolean inTrouble) {
        long begin = Math.max(from, start);
        long end = Math.min(to, start + Ribbon.CELLS * Touched.QUARTER);
        while (begin < end) {
            int cell = (int) ((begin - start) / Touched.QUARTER);
            long until = Math.min(end, start + (cell + 1) * Touched.QUARTER);
            watched[cell] += (until - begin) / 1000.0;
            trouble[cell] += inTrouble ? (until - begin) / 1000.0 : 0;
            begin = until;
        }
    }

    Ribbon ribbon(Instant from) {
        List<Ribbon.Cell> cells = new ArrayList<>();
        for (int i = 0; i < Ribbon.CELLS; i++) {
            cells.add(new Ribbon.Cell(
                    figure(clients[i]),
                    figure(utilisation[i]),
                    watched[i] == 0 ? 0 : Math.min(1, trouble[i] / watched[i]),
                    covered[i] <= 0 ? 0 : Math.min(1, watched[i] / covered[i])));
        }
        return new Ribbon(from, cells);
    }

    private static OptionalDouble figure(double value) {
        return Double.isNaN(value) ? OptionalDouble.empty() : OptionalDouble.of(value);
    }
}
