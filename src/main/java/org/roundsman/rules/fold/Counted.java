package org.roundsman.rules.fold;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.function.LongPredicate;

/** Times at which something happened, as far back as they count. Used by one thread. */
final class Counted {

    /** More of them than that tell nothing more. */
    private static final int MOST = 200;

    private final Deque<Long> times = new ArrayDeque<>();

    /** Adds what happened later than the last; whether it did. */
    boolean add(long at) {
        boolean later = times.isEmpty() || at > times.peekLast();
        if (later) {
            times.add(at);
            if (times.size() > MOST) {
                times.poll();
            }
        }
        return later;
    }

    /** How many lie within the time before that moment, the older end left out. */
    int within(long now, long windowMillis) {
        while (!times.isEmpty() && times.peek() <= now - windowMillis) {
            times.poll();
        }
        return times.size();
    }

    /** Takes back those for which it holds; whether there were any. */
    boolean takeBack(LongPredicate which) {
        return times.removeIf(which::test);
    }

    /** The first of them that counts; the least time there is when there is none. */
    long first() {
        return times.isEmpty() ? LevelState.NONE : times.peek();
    }
}
