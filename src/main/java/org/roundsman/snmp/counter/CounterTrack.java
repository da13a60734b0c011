package org.roundsman.snmp.counter;

/**
 * The last sample of one counter, and how far the next one is from it (RFC 2578 sections 7.1.6 and 7.1.10, RFC 2863
 * ifCounterDiscontinuityTime). Where the growth cannot be told it is unknown, never guessed. Not safe between threads.
 */
public final class CounterTrack {

    /** Closer samples say too little: agents refresh their counters at a pace of their own. */
    private static final double SHORTEST_SECONDS = 1;

    private static final double TWO_TO_32 = 4_294_967_296.0;

    private long value;
    private Moment at;
    private long discontinuity;
    private double growth = Double.NaN;
    private double seconds = Double.NaN;
    private int bits;

    /**
     * Takes a sample.
     *
     * @param bits width of the counter, 32 or 64
     * @param sampled the counter, as unsigned number of that width
     * @param discontinued the counter's discontinuity time, any constant where the device has none
     */
    public void sample(int bits, long sampled, long discontinued, Moment now) {
        growth = Double.NaN;
        seconds = Double.NaN;
        boolean continuous = at != null && at.epoch() == now.epoch() && discontinuity == discontinued;
        if (continuous) {
            double distance = now.seconds() - at.seconds();
            if (distance < SHORTEST_SECONDS) {
                return;
            }
            seconds = distance;
            growth = toDouble(growth(bits, value, sampled));
        }
        this.bits = bits;
        value = sampled;
        at = now;
        discontinuity = discontinued;
    }

    /** The device did not give the counter this time: the sample before stays. */
    public void miss() {
        growth = Double.NaN;
        seconds = Double.NaN;
    }

    /** Growth between the last two samples; NaN when it is unknown. */
    public double growth() {
        return growth;
    }

    /** Growth per second; NaN when it is unknown. */
    public double perSecond() {
        return growth / seconds;
    }

    /**
     * Whether the counter may have wrapped more than once between the last two samples, so that their distance says
     * nothing. RFC 2863 section 3.1.6 asks for 64-bit counters on fast interfaces for that reason.
     *
     * @param mostPerSecond the fastest that it can grow
     */
    public boolean mayHaveWrappedUnseen(double mostPerSecond) {
        return bits == 32 && seconds * mostPerSecond >= TWO_TO_32;
    }

    /**
     * How far a counter that ran on went from one value to the next, at most one wrap between.
     *
     * @return unsigned, of the counter's width
     */
    public static long growth(int bits, long from, long to) {
        return bits == 64 ? to - from : (to - from) & 0xffff_ffffL;
    }

    private static double toDouble(long unsigned) {
        return unsigned >= 0 ? unsigned : (unsigned >>> 1) * 2.0 + (unsigned & 1);
    }
}
