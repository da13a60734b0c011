package org.roundsman.polling;

import io.micrometer.core.instrument.MeterRegistry;
import java.time.Clock;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ScheduledThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.LongConsumer;
import org.jboss.logging.Logger;
import org.roundsman.measure.Outcome;
import org.roundsman.measure.Reading;
import org.roundsman.snmp.DeviceMemory;
import org.roundsman.snmp.Visit;
import org.roundsman.snmp.VisitKind;

/**
 * Makes the rounds: visits every watched device on its timetable and hands what it brings back to the sink. Thread-safe.
 */
public final class Rounds implements AutoCloseable {

    /** How devices are visited; {@code SnmpVisitor::visit} outside of tests. */
    public interface Visitor extends BiFunction<DeviceMemory, VisitKind, CompletableFuture<Visit>> {}

    private static final Logger LOG = Logger.getLogger(Rounds.class);

    private final Visitor visitor;
    private final ReadingSink sink;
    private final Clock clock;
    private final Timetable timetable;
    private final Admission admission;
    private final RoundsMeters meters;
    private final Map<Long, Watch> watches = new ConcurrentHashMap<>();
    private final ScheduledThreadPoolExecutor timer;
    private volatile LongConsumer restartListener = device -> {};

    public Rounds(Visitor visitor, ReadingSink sink, RoundsSettings settings, Clock clock, MeterRegistry registry) {
        this.visitor = visitor;
        this.sink = sink;
        this.clock = clock;
        this.timetable = new Timetable(settings.longestBackOff());
        this.admission = new Admission(settings.inFlightPerSite(), settings.inFlight());
        this.meters = new RoundsMeters(registry);
        this.timer = new ScheduledThreadPoolExecutor(1, task -> {
            Thread thread = new Thread(task, "rounds-timetable");
            thread.setDaemon(true);
            return thread;
        });
        timer.setRemoveOnCancelPolicy(true);
        timer.setExecuteExistingDelayedTasksAfterShutdownPolicy(false);
        meters.watching(this, admission);
    }

    /**
     * Watches these devices from now on and no others. A device whose target is unchanged keeps its memory and its
     * timetable; a changed one starts afresh.
     */
    public synchronized void watch(List<PollTarget> targets) {
        Map<Long, PollTarget> wanted = new HashMap<>();
        targets.forEach(target -> wanted.put(target.deviceId(), target));
        watches.values().removeIf(watch -> {
            boolean stale = !watch.target().equals(wanted.get(watch.target().deviceId()));
            if (stale) {
                watch.end();
            }
            return stale;
        });
        for (PollTarget target : targets) {
            watches.computeIfAbsent(target.deviceId(), id -> begin(target));
        }
    }

    /** How many devices are watched. */
    public int devices() {
        return watches.size();
    }

    /**
     * Visits one watched device at once, after the round that may be going on, and stores the reading as well.
     *
     * @return empty when the device is not watched
     */
    public Optional<CompletableFuture<Visit>> visitNow(long deviceId) {
        return Optional.ofNullable(watches.get(deviceId)).map(watch -> {
            CompletableFuture<Visit> result = new CompletableFuture<>();
            watch.inTurn(() -> visitor.apply(watch.memory(), VisitKind.TRACED).whenComplete((visit, fault) -> {
                if (visit != null) {
                    tellRestart(watch, visit);
                    watch.note(visit.outcome());
                    sink.accept(reading(watch, visit, watch.due()));
                }
                watch.turnEnded();
                complete(result, visit, fault);
            }));
            return result;
        });
    }

    /** Whether this device is watched and has not fallen silent. */
    public boolean reachable(long deviceId) {
        Watch watch = watches.get(deviceId);
        return watch != null && !watch.silent();
    }

    /** Who hears the id of a device that a round found restarted, on a receiving thread; one listener, which must not block. */
    public void onRestart(LongConsumer listener) {
        restartListener = listener;
    }

    /**
     * Asks a device something beside its rounds: one such errand of a device at a time, within the bounds of its site and
     * of all rounds. It has a memory of its own, so that a round falls due and is made while it goes on.
     *
     * @param errand starts asking; called on any thread, must not block
     * @return empty when the device is not watched or has fallen silent; cancelled when it is taken out meanwhile
     */
    public <T> Optional<CompletableFuture<T>> aside(
            long deviceId, Function<DeviceMemory, CompletableFuture<T>> errand) {
        return Optional.ofNullable(watches.get(deviceId))
                .filter(watch -> !watch.silent())
                .map(watch -> {
                    CompletableFuture<T> result = new CompletableFuture<>();
                    long site = watch.target().siteId();
                    watch.aside().inTurn(() -> admission.enter(site, () -> aside(watch, errand, result)));
                    return result;
                });
    }

    private void tellRestart(Watch watch, Visit visit) {
        if (visit.restarted()) {
            restartListener.accept(watch.target().deviceId());
        }
    }

    private <T> void aside(
            Watch watch, Function<DeviceMemory, CompletableFuture<T>> errand, CompletableFuture<T> result) {
        CompletableFuture<T> asked;
        try {
            asked = watch.ended()
                    ? CompletableFuture.failedFuture(new CancellationException("the device is not watched any more"))
                    : errand.apply(watch.aside().memory());
        } catch (RuntimeException e) {
            asked = CompletableFuture.failedFuture(e);
        }
        asked.whenComplete((answer, fault) -> {
            admission.leave(watch.target().siteId());
            watch.aside().turnEnded();
            complete(result, answer, fault);
        });
    }

    /**
     * Makes a round of one watched device soon, out of its turn, since the device itself gave a sign. Several wishes are
     * served by one round, and the bounds of the site hold. When nobody answers it, nothing is stored: only the rounds of
     * the timetable decide that a device is silent.
     *
     * @param apart at least so long after the round before that was made out of turn
     * @return false when the device is not watched
     */
    public boolean soon(long deviceId, Duration apart) {
        Watch watch = watches.get(deviceId);
        if (watch == null) {
            return false;
        }
        long delay = watch.planExtra(clock.millis(), apart.toMillis());
        if (delay >= 0) {
            try {
                timer.schedule(() -> beginExtra(watch), delay, TimeUnit.MILLISECONDS);
            } catch (RejectedExecutionException e) {
                LOG.debugf("Rounds are closed; device %d is not visited again", deviceId);
            }
        }
        return true;
    }

    private void beginExtra(Watch watch) {
        watch.beginExtra(clock.millis());
        watch.inTurn(() -> admission.enter(watch.target().siteId(), () -> visitOutOfTurn(watch)));
    }

    private void visitOutOfTurn(Watch watch) {
        if (watch.ended()) {
            finish(watch);
            return;
        }
        meters.extra();
        visitor.apply(watch.memory(), watch.nextKind()).whenComplete((visit, fault) -> {
            try {
                if (fault != null) {
                    LOG.errorf(
                            fault,
                            "A round of device %d broke off",
                            watch.target().deviceId());
                } else if (visit.outcome().kind() != Outcome.Kind.UNANSWERED && !watch.ended()) {
                    tellRestart(watch, visit);
                    watch.note(visit.outcome());
                    sink.accept(reading(watch, visit, watch.due()));
                }
            } finally {
                finish(watch);
            }
        });
    }

    @Override
    public void close() {
        timer.shutdownNow();
        watches.values().forEach(Watch::end);
    }

    private Watch begin(PollTarget target) {
        Watch watch = new Watch(target);
        schedule(watch, Timetable.nextOnGrid(clock.millis(), target.deviceId(), target.interval()));
        return watch;
    }

    private void schedule(Watch watch, long due) {
        try {
            long delay = Math.max(0, due - clock.millis());
            watch.timer(due, timer.schedule(() -> fallDue(watch, due), delay, TimeUnit.MILLISECONDS));
        } catch (RejectedExecutionException e) {
            LOG.debugf(
                    "Rounds are closed; device %d is not visited again",
                    watch.target().deviceId());
        }
    }

    private void fallDue(Watch watch, long due) {
        meters.due();
        if (watch.busy()) {
            meters.skipped();
            schedule(watch, timetable.after(due, watch.target().interval(), 0));
            return;
        }
        watch.inTurn(() -> admission.enter(watch.target().siteId(), () -> visit(watch, due)));
    }

    private void visit(Watch watch, long due) {
        if (watch.ended()) {
            finish(watch);
            return;
        }
        meters.begun(Duration.ofMillis(clock.millis() - due));
        visitor.apply(watch.memory(), watch.nextKind()).whenComplete((visit, fault) -> {
            try {
                ended(watch, due, visit, fault);
            } finally {
                finish(watch);
            }
        });
    }

    private void finish(Watch watch) {
        admission.leave(watch.target().siteId());
        watch.turnEnded();
    }

    private void ended(Watch watch, long due, Visit visit, Throwable fault) {
        Duration interval = watch.target().interval();
        if (fault != null) {
            // Silence and refusal are outcomes, so this is a fault of ours: say so, and keep the rounds going.
            LOG.errorf(fault, "The round of device %d broke off", watch.target().deviceId());
            schedule(watch, onGrid(timetable.after(due, interval, 0), watch));
            return;
        }
        meters.ended(visit);
        tellRestart(watch, visit);
        int misses = watch.note(visit.outcome());
        long next = onGrid(timetable.after(due, interval, misses), watch);
        schedule(watch, next);
        if (!watch.ended()) {
            sink.accept(reading(watch, visit, next));
        }
    }

    /** A due time that has passed already would only bunch rounds up: the next one on the grid takes its place. */
    private long onGrid(long next, Watch watch) {
        long now = clock.millis();
        return next > now
                ? next
                : Timetable.nextOnGrid(
                        now, watch.target().deviceId(), watch.target().interval());
    }

    private static Reading reading(Watch watch, Visit visit, long next) {
        // Never less than the interval: a late round must not make the time to the next look unwatched.
        long seconds = Math.round((next - visit.at().toEpochMilli()) / 1000.0);
        int nextIn = (int) Math.max(watch.target().interval().toSeconds(), seconds);
        if (visit.outcome().kind() == Outcome.Kind.UNANSWERED) {
            return Reading.empty(watch.target().deviceId(), visit.at(), visit.outcome(), nextIn);
        }
        return new Reading(
                watch.target().deviceId(),
                visit.at(),
                visit.outcome(),
                nextIn,
                visit.device(),
                visit.radios(),
                visit.networks(),
                visit.facts());
    }

    private static <T> void complete(CompletableFuture<T> result, T answer, Throwable fault) {
        if (fault != null) {
            result.completeExceptionally(fault);
        } else {
            result.complete(answer);
        }
    }
}
