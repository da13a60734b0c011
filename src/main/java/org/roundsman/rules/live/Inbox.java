package org.roundsman.rules.live;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import org.roundsman.measure.Reading;

/**
 * Readings that wait for the rules. It never makes anybody wait: what does not fit is not kept, and from when on readings
 * are missing is remembered, so that they are read from the database again. Thread-safe.
 */
final class Inbox {

    private final int size;
    private final Deque<List<Reading>> batches = new ArrayDeque<>();
    private int waiting;
    private Instant lostSince;

    Inbox(int size) {
        this.size = size;
    }

    synchronized void offer(List<Reading> readings) {
        // once something is missing, what follows would only look as if nobody had looked in between
        if (lostSince != null || waiting + readings.size() > size) {
            lost(readings);
            return;
        }
        batches.add(readings);
        waiting += readings.size();
        notifyAll();
    }

    private void lost(List<Reading> readings) {
        readings.stream().map(Reading::at).min(Instant::compareTo).ifPresent(this::lost);
    }

    /** Readings from then on are to be read again. */
    synchronized void lost(Instant since) {
        if (lostSince == null || since.isBefore(lostSince)) {
            lostSince = since;
        }
    }

    /** The next batch; waits a while for one. Empty when none came. */
    synchronized List<Reading> next(Duration wait) throws InterruptedException {
        if (batches.isEmpty()) {
            wait(Math.max(1, wait.toMillis()));
        }
        List<Reading> next = batches.poll();
        if (next == null) {
            return List.of();
        }
        waiting -= next.size();
        return next;
    }

    /** Since when readings are missing, once all that waited is taken out; they are taken in again from now on. */
    synchronized Optional<Instant> takeLost() {
        if (lostSince == null || !batches.isEmpty()) {
            return Optional.empty();
        }
        Instant since = lostSince;
        lostSince = null;
        return Optional.of(since);
    }

    synchronized int waiting() {
        return waiting;
    }
}
