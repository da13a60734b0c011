package org.roundsman.demo.model;

/**
 * A fault that wanders: in each window of time it meets some of the members, spread evenly from one drawn by lot.
 *
 * @param key lot
 * @param members how many can be met
 * @param each how many are met in each window, at least 1
 * @param windowMillis length of a window; windows count from 1970
 */
record Rotation(long key, int members, int each, long windowMillis) {

    long window(long epochMilli) {
        return Math.floorDiv(epochMilli, windowMillis);
    }

    boolean meets(long window, int member) {
        int stride = members / each;
        int from = Lot.below(Lot.key(key, window), members);
        int place = Math.floorMod(member - from, members);
        return place % stride == 0 && place / stride < each;
    }
}
