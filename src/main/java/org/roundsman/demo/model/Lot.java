package org.roundsman.demo.model;

/** Draws by lot: pure functions of a key, so that the same key always draws the same. Thread-safe. */
public final class Lot {

    private Lot() {}

    /** Mixes a key well (the finaliser of SplitMix64, Steele, Lea and Flood 2014). */
    public static long mix(long key) {
        long z = key + 0x9E3779B97F4A7C15L;
        z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
        z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
        return z ^ (z >>> 31);
    }

    public static long key(long a, long b) {
        return mix(mix(a) ^ b * 0xD1342543DE82EF95L);
    }

    public static long key(long a, long b, long c) {
        return key(key(a, b), c);
    }

    /** A figure from 0 to below 1. */
    public static double unit(long key) {
        return (mix(key) >>> 11) * 0x1.0p-53;
    }

    /** A whole number from 0 to below {@code bound}. */
    public static int below(long key, int bound) {
        return (int) (unit(key) * bound);
    }

    /** Smooth noise from 0 to below 1 along {@code x}: a new lot at each whole number, eased in between. */
    public static double smooth(long key, double x) {
        double floor = Math.floor(x);
        long cell = (long) floor;
        double f = x - floor;
        double eased = f * f * (3 - 2 * f);
        double from = unit(key + cell * 0x632BE59BD9B4E019L);
        double to = unit(key + (cell + 1) * 0x632BE59BD9B4E019L);
        return from + (to - from) * eased;
    }
}
