package org.roundsman.readings;

import java.time.Instant;
import java.util.List;
import java.util.OptionalDouble;

/**
 * A day in 96 quarter hours, the last of which holds the present moment.
 *
 * @param from start of the first cell, a whole quarter hour
 * @param cells always 96, oldest first
 */
public record Ribbon(Instant from, List<Cell> cells) {

    public static final int CELLS = 96;

    public Ribbon {
        cells = List.copyOf(cells);
        if (cells.size() != CELLS) {
            throw new IllegalArgumentException(cells.size() + " cells in a ribbon");
        }
    }

    /**
     * One quarter hour.
     *
     * @param clients mean clients, empty when not measured
     * @param utilisation highest mean channel utilisation of any radio in per cent, empty when not measured
     * @param silent share of the watched time in which devices were silent or refusing, 0 to 1
     * @param watched share of the quarter hour that we were looking, 0 to 1
     */
    public record Cell(OptionalDouble clients, OptionalDouble utilisation, double silent, double watched) {
        public static final Cell BLANK = new Cell(OptionalDouble.empty(), OptionalDouble.empty(), 0, 0);
    }
}
