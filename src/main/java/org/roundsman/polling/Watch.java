package org.roundsman.polling;

import java.util.ArrayDeque;
import java.util.Queue;
import java.util.concurrent.Future;
import org.roundsman.measure.Outcome;
import org.roundsman.snmp.DeviceMemory;
import org.roundsman.snmp.VisitKind;

/** What the rounds remember of one device. All state is guarded by the watch itself. */
final class Watch {

    private final PollTarget target;
    private final DeviceMemory memory;
    private final Queue<Runnable> turns = new ArrayDeque<>();

    /** For what is asked beside the rounds. */
    private final AsideLane aside;

    private boolean busy;
    private boolean ended;
    private int misses;
    private long due;
    private boolean extraPlanned;
    private long extraBegan = Long.MIN_VALUE / 2;
    private Future<?> timer;

    Watch(PollTarget target) {
        this.target = target;
        this.memory = new DeviceMemory(target.agent());
        this.aside = new AsideLane(target.agent());
    }

    PollTarget target() {
        return target;
    }

    DeviceMemory memory() {
        return memory;
    }

    AsideLane aside() {
        return aside;
    }

    /** So many rounds went unanswered that the device counts as silent. */
    synchronized boolean silent() {
        return misses >= Timetable.SILENT_AFTER;
    }

    /** Runs the visit now, or after the one that goes on: the device's memory serves one at a time. */
    void inTurn(Runnable visit) {
        synchronized (this) {
            if (busy) {
                turns.add(visit);
                return;
            }
            busy = true;
        }
        visit.run();
    }

    /** The visit has ended; the next one that waits may begin. */
    void turnEnded() {
        Runnable next;
        synchronized (this) {
            next = turns.poll();
            busy = next != null;
        }
        if (next != null) {
            next.run();
        }
    }

    synchronized boolean busy() {
        return busy;
    }

    synchronized VisitKind nextKind() {
        return misses >= Timetable.SILENT_AFTER ? VisitKind.PROBE : VisitKind.ROUND;
    }

    /** Takes note of an outcome; returns unanswered rounds in a row, this one included. */
    synchronized int note(Outcome outcome) {
        misses = outcome.kind() == Outcome.Kind.UNANSWERED ? misses + 1 : 0;
        return misses;
    }

    synchronized long due() {
        return due;
    }

    /** Sets the next due time; does nothing once ended. */
    synchronized void timer(long nextDue, Future<?> handle) {
        if (ended) {
            handle.cancel(false);
            return;
        }
        due = nextDue;
        timer = handle;
    }

    /**
     * Plans a round out of turn, unless one is planned already.
     *
     * @return milliseconds until it may begin, or -1 when nothing is to be done
     */
    synchronized long planExtra(long now, long apart) {
        if (extraPlanned || ended) {
            return -1;
        }
        extraPlanned = true;
        return Math.max(0, Math.min(apart, extraBegan + apart - now));
    }

    synchronized void beginExtra(long now) {
        extraPlanned = false;
        extraBegan = now;
    }

    synchronized boolean ended() {
        return ended;
    }

    synchronized void end() {
        ended = true;
        if (timer != null) {
            timer.cancel(false);
        }
    }
}
