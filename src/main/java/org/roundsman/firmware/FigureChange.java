package org.roundsman.firmware;

/**
 * A figure in the week before and after a change of firmware: means over the quarter hours of the week that both have, so that
 * like is compared with like. It tells what differs, never why.
 *
 * @param quarters quarter hours that both weeks have; a whole week has {@link #WHOLE_WEEK}
 */
public record FigureChange(Figure figure, double before, double after, int quarters) {

    public static final int WHOLE_WEEK = 672;

    /** With fewer, a day's worth, nothing is said. */
    public static final int LEAST = 96;

    /** A difference of less than this share of the figure before is none (our own bound, no source). */
    public static final double SHARE = 0.2;

    /** What is compared; a difference below the bound is none, however large its share (our own bounds, no source). */
    public enum Figure {
        CLIENTS("clients", "", 1.0),
        RETRIES("retries", "%", 2.0),
        UTILISATION("channel utilisation", "%", 5.0);

        private final String word;
        private final String unit;
        private final double bound;

        Figure(String word, String unit, double bound) {
            this.word = word;
            this.unit = unit;
            this.bound = bound;
        }

        public String word() {
            return word;
        }

        /** Empty for a count; for a percentage the bound is in percentage points. */
        public String unit() {
            return unit;
        }

        public double bound() {
            return bound;
        }
    }

    /** How it is after, seen from before. */
    public enum Outcome {
        AS_BEFORE("as before"),
        HIGHER("higher"),
        LOWER("lower"),
        TOO_LITTLE("too little data to say");

        private final String word;

        Outcome(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    public Outcome outcome() {
        if (quarters < LEAST) {
            return Outcome.TOO_LITTLE;
        }
        double difference = after - before;
        if (Math.abs(difference) <= Math.max(figure.bound, SHARE * before)) {
            return Outcome.AS_BEFORE;
        }
        return difference > 0 ? Outcome.HIGHER : Outcome.LOWER;
    }

    /** Whether less than half of the week can be compared. */
    public boolean thin() {
        return quarters < WHOLE_WEEK / 2;
    }
}
