package org.roundsman.readings.spans;

import java.util.SortedSet;
import java.util.TreeSet;

/** The quarter hours whose figures must be worked out again, by their starts in milliseconds. */
public final class Touched {

    /** Length of a quarter hour in milliseconds. */
    public static final long QUARTER = 900_000;

    private final SortedSet<Long> quarters = new TreeSet<>();

    /** Start of the quarter hour that holds the time; every UTC offset in use is a whole number of quarter hours. */
    public static long quarter(long millis) {
        return Math.floorDiv(millis, QUARTER) * QUARTER;
    }

    public void at(long millis) {
        quarters.add(quarter(millis));
    }

    /** Both ends included. */
    public void between(long from, long to) {
        for (long quarter = quarter(from); quarter <= to; quarter += QUARTER) {
            quarters.add(quarter);
        }
    }

    public SortedSet<Long> quarters() {
        return quarters;
    }
}
