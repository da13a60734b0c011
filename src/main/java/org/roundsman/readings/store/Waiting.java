package org.roundsman.readings.store;

import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import org.jboss.logging.Logger;
import org.roundsman.measure.Reading;
import org.roundsman.readings.spool.Spool;

/**
 * Readings that wait for the database: in memory, and on disk when memory is full or the database takes nothing. What is
 * on disk is always older than what is in memory, unless the disk takes no more. Safe between threads.
 */
final class Waiting {

    private static final Logger LOG = Logger.getLogger(Waiting.class);

    private final WriterSettings settings;
    private final Spool spool;
    private final WriterListener listener;
    private final Deque<Reading> queue = new ArrayDeque<>();
    private Batch inHand = new Batch(List.of(), false);
    private boolean blocked;
    private boolean closed;
    private boolean spoolUnreadable;
    private long lost;
    private String trouble;

    /** Readings for one transaction, and whether they are still on disk. */
    record Batch(List<Reading> readings, boolean onDisk) {
        boolean isEmpty() {
            return readings.isEmpty();
        }
    }

    Waiting(WriterSettings settings, Spool spool, WriterListener listener) {
        this.settings = settings;
        this.spool = spool;
        this.listener = listener;
    }

    synchronized void add(Reading reading) {
        boolean spilling = blocked || closed || !spool.isEmpty();
        if (!spilling && queue.size() >= settings.queueSize()) {
            spilling = spillQueue();
        }
        if (spilling && queue.isEmpty() && spill(reading)) {
            return;
        }
        if (queue.size() >= settings.queueSize()) {
            lose(1);
            return;
        }
        queue.add(reading);
        if (queue.size() >= settings.batchSize() || queue.size() == 1) {
            notifyAll();
        }
    }

    /** The oldest readings; waits a while for enough of them. Empty when there are none. */
    synchronized Batch next() throws InterruptedException {
        if (!onDisk()) {
            long until = System.nanoTime() + settings.flush().toNanos();
            long left = settings.flush().toNanos();
            while (queue.size() < settings.batchSize() && left > 0 && !closed && spool.isEmpty()) {
                wait(Math.max(1, left / 1_000_000));
                left = until - System.nanoTime();
            }
        }
        inHand = onDisk() ? fromDisk() : fromMemory();
        return inHand;
    }

    private boolean onDisk() {
        return !spoolUnreadable && !spool.isEmpty();
    }

    private Batch fromDisk() {
        try {
            return new Batch(spool.peek(settings.batchSize()), true);
        } catch (IOException e) {
            spoolUnreadable = true;
            trouble = "Waiting readings in " + spool.folder() + " cannot be read back (" + e.getMessage()
                    + "). Check that disk and the folder's permissions, then start again: they are kept.";
            LOG.error(trouble);
            return fromMemory();
        }
    }

    private Batch fromMemory() {
        List<Reading> readings = new ArrayList<>(Math.min(queue.size(), settings.batchSize()));
        while (readings.size() < settings.batchSize() && !queue.isEmpty()) {
            readings.add(queue.poll());
        }
        return new Batch(readings, false);
    }

    /** The batch in hand is stored. */
    synchronized void done() {
        if (inHand.onDisk()) {
            try {
                spool.advance();
            } catch (IOException e) {
                // the same readings come again after the next start, and change nothing then
                LOG.warnf("%s: a segment of stored readings stays behind: %s", spool.folder(), e.getMessage());
            }
        }
        inHand = new Batch(List.of(), false);
        blocked = false;
        if (spool.isEmpty()) {
            trouble = null;
        }
    }

    /**
     * The database takes nothing: from now on readings wait on disk.
     *
     * @return whether the batch in hand is on disk too, so that it comes again from {@link #next}
     */
    synchronized boolean block() {
        blocked = true;
        boolean kept = inHand.onDisk() || inHand.isEmpty() || keepInHand();
        if (kept) {
            inHand = new Batch(List.of(), false);
            spillQueue();
        }
        return kept;
    }

    private boolean keepInHand() {
        List<Reading> rest = new ArrayList<>(inHand.readings());
        while (!rest.isEmpty() && spill(rest.get(0))) {
            rest.remove(0);
        }
        inHand = new Batch(rest, false);
        return rest.isEmpty();
    }

    private boolean spillQueue() {
        while (!queue.isEmpty() && spill(queue.peek())) {
            queue.poll();
        }
        return queue.isEmpty();
    }

    private boolean spill(Reading reading) {
        try {
            spool.append(reading);
            listener.spilled(1);
            return true;
        } catch (IOException e) {
            if (trouble == null) {
                trouble = "Readings that wait for the database cannot be kept on disk: " + e.getMessage()
                        + ". Free space on the disk of " + spool.folder()
                        + ", raise roundsman.readings.spool-bytes, or mend the database; until then they wait in memory"
                        + " and the newest get lost.";
                LOG.error(trouble);
            }
            return false;
        }
    }

    private void lose(int readings) {
        lost += readings;
        listener.lost(readings);
    }

    /** The readings of the batch in hand, less what went to disk since {@link #next}. */
    synchronized Batch inHand() {
        return inHand;
    }

    /** No more waiting for full batches; wakes whoever waits. */
    synchronized void hurry() {
        closed = true;
        notifyAll();
    }

    /** Waits until the time is over or {@link #hurry} was called. */
    synchronized void pause(Duration time) throws InterruptedException {
        long until = System.nanoTime() + time.toNanos();
        for (long left = time.toNanos(); left > 0 && !closed; left = until - System.nanoTime()) {
            wait(Math.max(1, left / 1_000_000));
        }
    }

    /** Puts everything that waits in memory on disk. */
    synchronized void close() throws IOException {
        closed = true;
        if (!inHand.onDisk()) {
            keepInHand();
        }
        spillQueue();
        int left = queue.size() + (inHand.onDisk() ? 0 : inHand.readings().size());
        if (left > 0) {
            lose(left);
            LOG.errorf("%d readings are lost with the end of the service: %s", left, trouble);
        }
        spool.close();
    }

    synchronized long queued() {
        return queue.size() + (inHand.onDisk() ? 0 : inHand.readings().size());
    }

    long spilled() {
        return spool.size();
    }

    synchronized long lost() {
        return lost;
    }

    synchronized Optional<String> trouble() {
        return Optional.ofNullable(trouble);
    }

    /** When the oldest waiting reading was taken, as far as it is in memory. */
    synchronized Optional<Instant> oldest() {
        return inHand.isEmpty()
                ? Optional.ofNullable(queue.peek()).map(Reading::at)
                : Optional.of(inHand.readings().get(0).at());
    }
}
