package org.roundsman.discovery.run;

import java.sql.SQLException;
import java.time.Clock;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Queue;
import java.util.Set;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ScheduledThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import org.jboss.logging.Logger;
import org.roundsman.discovery.AddressRanges;
import org.roundsman.discovery.AddressRanges.Target;
import org.roundsman.discovery.Aside;
import org.roundsman.discovery.Sweep;
import org.roundsman.discovery.SweepState;
import org.roundsman.discovery.store.FindingTable;
import org.roundsman.discovery.store.PlanTable;
import org.roundsman.discovery.store.SweepTable;

/**
 * Runs the sweeps that the table says are running, so many at a time; the rest wait in order. What was heard is stored
 * in batches. When the service stops or is killed, a sweep stays running in the table, and {@link #takeUp} goes on with
 * the addresses that have no result yet. All of its state is touched by its one thread, but for what is heard.
 */
public final class SweepRunner implements AutoCloseable {

    private static final Logger LOG = Logger.getLogger(SweepRunner.class);
    private static final long STORE_EVERY_MILLIS = 500;

    /** The tables of sweeps. */
    public record Store(SweepTable sweeps, PlanTable plans, FindingTable findings) {}

    /**
     * How to go about it.
     *
     * @param requestsPerSecond of one sweep
     * @param inFlight addresses of one sweep at the same time
     * @param atOnce sweeps at the same time
     */
    public record Bounds(int requestsPerSecond, int inFlight, int atOnce) {}

    private final Store store;
    private final KeyRing keys;
    private final SweepRun.Asker asker;
    private final Bounds bounds;
    private final Clock clock;
    private final Map<Long, Going> going = new LinkedHashMap<>();
    private final ScheduledThreadPoolExecutor thread;
    private boolean failing;
    /** Whether the table may hold what this process does not know of yet. */
    private volatile boolean changed;

    private volatile Set<Long> begun = Set.of();

    public SweepRunner(Store store, KeyRing keys, SweepRun.Asker asker, Bounds bounds, Clock clock) {
        this.store = store;
        this.keys = keys;
        this.asker = asker;
        this.bounds = bounds;
        this.clock = clock;
        this.thread = new ScheduledThreadPoolExecutor(1, task -> {
            Thread made = new Thread(task, "sweeps");
            made.setDaemon(true);
            return made;
        });
        thread.setRemoveOnCancelPolicy(true);
        thread.setExecuteExistingDelayedTasksAfterShutdownPolicy(false);
        thread.scheduleWithFixedDelay(this::look, STORE_EVERY_MILLIS, STORE_EVERY_MILLIS, TimeUnit.MILLISECONDS);
    }

    /** A sweep on its way. */
    private static final class Going implements SweepRun.Listener {
        final Queue<Heard> heard = new ConcurrentLinkedQueue<>();
        SweepRun run;
        boolean stopped;
        volatile boolean ended;
        volatile boolean whole;

        @Override
        public void heard(Heard one) {
            heard.add(one);
        }

        @Override
        public void ended(boolean all) {
            whole = all;
            ended = true;
        }
    }

    /** Looks at the table soon: begins what is new there, stops what was cancelled. Any thread. */
    public void takeUp() {
        changed = true;
        try {
            thread.execute(this::look);
        } catch (RejectedExecutionException e) {
            LOG.debug("Sweeps are closed; the next start goes on with them");
        }
    }

    /** Whether the sweep has begun to ask in this process: otherwise it waits for its turn. */
    public boolean hasBegun(long sweepId) {
        return begun.contains(sweepId);
    }

    private void look() {
        if (!changed && going.isEmpty()) {
            return;
        }
        changed = false;
        try {
            storeHeard();
            follow(store.sweeps().running());
            failing = false;
        } catch (SQLException | RuntimeException e) {
            if (!failing) {
                LOG.warnf("Sweeps wait, the database does not take what they found: %s", e.getMessage());
                LOG.debug("The failure in full", e);
            }
            failing = true;
            changed = true;
        }
    }

    private void storeHeard() throws SQLException {
        for (Map.Entry<Long, Going> entry : List.copyOf(going.entrySet())) {
            Going one = entry.getValue();
            boolean ended = one.ended; // read first: what comes before the end is in the queue already
            List<Heard> batch = new ArrayList<>(one.heard);
            if (!batch.isEmpty()) {
                store.findings().store(entry.getKey(), batch);
                batch.forEach(heard -> one.heard.remove());
            }
            if (ended) {
                // One that was stopped and resumed in between begins again with what is left.
                if (one.whole && !one.stopped) {
                    store.sweeps().turn(entry.getKey(), SweepState.RUNNING, SweepState.DONE, clock.instant());
                }
                going.remove(entry.getKey());
                begun = Set.copyOf(going.keySet());
            }
        }
    }

    private void follow(List<Sweep> running) throws SQLException {
        Set<Long> wanted = running.stream().map(Sweep::id).collect(Collectors.toSet());
        going.forEach((id, one) -> {
            if (!wanted.contains(id)) {
                one.stopped = true;
                one.run.stop();
            }
        });
        for (Sweep sweep : running) {
            if (!going.containsKey(sweep.id()) && going.size() < bounds.atOnce()) {
                begin(sweep);
            }
        }
    }

    private void begin(Sweep sweep) throws SQLException {
        KeyRing.Opened opened = keys.open(sweep.credentials());
        if (!opened.remark().isEmpty()) {
            store.sweeps().remark(sweep.id(), opened.remark());
        }
        if (opened.keys().isEmpty()) {
            store.sweeps().remark(sweep.id(), "None of its credentials can be used any more. " + opened.remark());
            store.sweeps().turn(sweep.id(), SweepState.RUNNING, SweepState.CANCELLED, clock.instant());
            return;
        }
        List<Target> left = left(sweep);
        Going one = new Going();
        Pace pace = new Pace(bounds.requestsPerSecond(), System::nanoTime);
        one.run = new SweepRun(
                new SweepRun.Manner(asker, pace, this::after, bounds.inFlight()), opened.keys(), left, one);
        going.put(sweep.id(), one);
        begun = Set.copyOf(going.keySet());
        LOG.infof("Sweep %d of site %d asks %d addresses", sweep.id(), sweep.siteId(), left.size());
        one.run.begin();
    }

    /** The addresses without a result; those set aside get theirs now. */
    private List<Target> left(Sweep sweep) throws SQLException {
        Set<Integer> done = new HashSet<>(store.sweeps().done(sweep.id()).keySet());
        Set<String> aside = store.plans().asides(sweep.siteId()).stream()
                .map(SweepRunner::address)
                .collect(Collectors.toSet());
        List<Target> left = new ArrayList<>();
        List<Integer> leftOut = new ArrayList<>();
        for (Target target : AddressRanges.read(sweep.ranges()).targets(sweep.ports())) {
            if (!done.contains(target.place())) {
                if (aside.contains(target.host() + " " + target.port())) {
                    leftOut.add(target.place());
                } else {
                    left.add(target);
                }
            }
        }
        store.findings().leaveOut(sweep.id(), leftOut);
        return left;
    }

    private static String address(Aside aside) {
        return aside.host() + " " + aside.port();
    }

    private void after(long nanos, Runnable task) {
        try {
            thread.schedule(task, nanos, TimeUnit.NANOSECONDS);
        } catch (RejectedExecutionException e) {
            LOG.debug("Sweeps are closed; the next start goes on with them");
        }
    }

    /** Asks no more, and stores what was heard; the sweeps stay running in the table. */
    @Override
    public void close() {
        thread.shutdownNow();
        try {
            if (!thread.awaitTermination(10, TimeUnit.SECONDS)) {
                LOG.warn("A sweep does not let go of the database; what it heard last is asked again after the start");
                return;
            }
            going.values().forEach(one -> one.run.stop());
            for (Map.Entry<Long, Going> entry : going.entrySet()) {
                store.findings().store(entry.getKey(), new ArrayList<>(entry.getValue().heard));
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } catch (SQLException | RuntimeException e) {
            LOG.warnf("What sweeps heard last could not be stored and is asked again: %s", e.getMessage());
        }
    }
}
