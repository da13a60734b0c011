package org.roundsman.snmp.counter;

/**
 * Follows a device's sysUpTime (RFC 3418, hundredths of a second modulo 2^32) and tells its wrap after 497 days from a
 * restart. Not safe between threads.
 */
public final class Uptime {

    /** TimeTicks wrap after so many hundredths of a second. */
    public static final long MODULUS = 1L << 32;

    private static final long TOLERANCE_TICKS = 500;
    private static final double TOLERANCE_SHARE = 0.01;
    private static final double WRAP_SECONDS = MODULUS / 100.0;

    /** What two samples say. */
    public enum Verdict {
        /** There is nothing to compare with. */
        FIRST,
        RAN_ON,
        RESTARTED,
        /** The clock stands where neither running on nor a restart since the last sample would put it. */
        UNSURE
    }

    private long ticks = -1;
    private long takenAtNanos;
    private int boots = -1;
    private long wraps;
    private int epoch;

    /**
     * Takes a sample.
     *
     * @param sampled sysUpTime, or -1 where the device gives none
     * @param sampledBoots snmpEngineBoots, or -1 where the device gives none
     * @param nanos when it was received, by System.nanoTime
     */
    public Verdict sample(long sampled, int sampledBoots, long nanos) {
        Verdict verdict = verdict(sampled, sampledBoots, nanos);
        if (verdict == Verdict.RAN_ON && sampled < ticks) {
            wraps++;
        } else if (verdict == Verdict.RESTARTED || verdict == Verdict.UNSURE) {
            epoch++;
            wraps = 0;
        }
        if (sampled < 0 != ticks < 0) {
            // From the device's time line to ours or back.
            epoch++;
        }
        ticks = sampled;
        takenAtNanos = nanos;
        boots = sampledBoots < 0 ? boots : sampledBoots;
        return verdict;
    }

    private Verdict verdict(long sampled, int sampledBoots, long nanos) {
        if (boots >= 0 && sampledBoots >= 0 && boots != sampledBoots) {
            return Verdict.RESTARTED;
        }
        if (sampled < 0 || ticks < 0) {
            return Verdict.FIRST;
        }
        return judge(ticks, (nanos - takenAtNanos) / 1e9, sampled);
    }

    /** What two samples of sysUpTime say, with so many seconds between them by our own clock. */
    public static Verdict judge(long before, double elapsedSeconds, long now) {
        double elapsed = elapsedSeconds * 100;
        double tolerance = TOLERANCE_TICKS + TOLERANCE_SHARE * elapsed;
        double off = Math.abs((before + elapsed) % MODULUS - now);
        if (Math.min(off, MODULUS - off) <= tolerance) {
            return Verdict.RAN_ON;
        }
        return now <= elapsed + tolerance ? Verdict.RESTARTED : Verdict.UNSURE;
    }

    /**
     * Learns of wraps from before we watched: snmpEngineTime counts seconds for 68 years (RFC 3411). Ignored where the
     * two clocks differ by anything but whole wraps.
     */
    public void widen(long engineTimeSeconds) {
        double behind = (engineTimeSeconds - ticks / 100.0) / WRAP_SECONDS;
        long whole = Math.round(behind);
        if (ticks >= 0 && whole > wraps && Math.abs(behind - whole) * WRAP_SECONDS < 60) {
            wraps = whole;
        }
    }

    /** Seconds since the restart, beyond 497 days as far as we saw or learnt it; NaN when the device gives none. */
    public double seconds() {
        return ticks < 0 ? Double.NaN : ticks / 100.0 + wraps * WRAP_SECONDS;
    }

    /** The last sample on the device's time line, which is our own clock where the device gives none. */
    public Moment moment() {
        return new Moment(ticks < 0 ? takenAtNanos / 1e9 : seconds(), epoch);
    }
}
