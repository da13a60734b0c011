package org.roundsman.rules.live;

import io.micrometer.core.instrument.Counter;
import io.micrometer.core.instrument.Gauge;
import io.micrometer.core.instrument.MeterRegistry;
import io.micrometer.core.instrument.Timer;
import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.enterprise.event.TransactionPhase;
import jakarta.inject.Inject;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.jboss.logging.Logger;
import org.roundsman.alarms.Signal;
import org.roundsman.alarms.SignalSink;
import org.roundsman.fleet.FleetChanged;
import org.roundsman.measure.Reading;
import org.roundsman.readings.ReadingsStored;
import org.roundsman.rules.RulesChanged;
import org.roundsman.rules.RulesConfig;

/** The one thread that judges what is stored by the rules and hands signals on. Nothing that was stored goes unjudged. */
@ApplicationScoped
class LiveRules {

    private static final Logger LOG = Logger.getLogger(LiveRules.class);
    private static final Duration WAIT = Duration.ofSeconds(1);
    private static final Duration EVENTS_EVERY = Duration.ofSeconds(5);
    private static final Duration SERVICE_EVERY = Duration.ofSeconds(15);
    private static final Duration REFRESH_EVERY = Duration.ofMinutes(1);

    private final LiveFolds folds;
    private final ServiceFigures figures;
    private final SignalSink sink;
    private final Clock clock;
    private final Inbox inbox;
    private final Counter judged;
    private final Counter told;
    private final Timer time;
    private final List<Signal> pending = new ArrayList<>();
    private final CountDownLatch stopping = new CountDownLatch(1);
    private final Thread thread = new Thread(this::run, "rules");
    private volatile boolean stale;
    private boolean begun;
    private final boolean enabled;
    private boolean failing;
    private Instant refreshed = Instant.MIN;
    private Instant lookedAtEvents = Instant.MIN;
    private Instant lookedAtService = Instant.MIN;

    @Inject
    LiveRules(Parts parts, SignalSink sink, RulesConfig config, Clock clock, MeterRegistry registry) {
        this.folds = new LiveFolds(parts.sources(), clock);
        this.figures = parts.figures();
        this.sink = sink;
        this.clock = clock;
        this.inbox = new Inbox(config.queueSize());
        this.enabled = config.enabled();
        this.judged = Counter.builder("roundsman.rules.readings")
                .description("Readings judged by the rules")
                .register(registry);
        this.told = Counter.builder("roundsman.rules.signals")
                .description("Signals that the rules gave: raised, changed, cleared")
                .register(registry);
        this.time = Timer.builder("roundsman.rules.batches")
                .description("Judging one batch of readings")
                .register(registry);
        Gauge.builder("roundsman.rules.waiting", inbox, Inbox::waiting)
                .description("Readings that wait for the rules")
                .register(registry);
        thread.setDaemon(true);
    }

    void start(@Observes @Priority(4_000) StartupEvent event) {
        if (enabled) {
            thread.start();
        }
    }

    /** Before the rounds stop: what is not judged any more is gone through at the next start. */
    void stop(@Observes @Priority(80) ShutdownEvent event) throws InterruptedException {
        stopping.countDown();
        thread.join(5_000);
    }

    void stored(@Observes ReadingsStored event) {
        if (enabled) {
            inbox.offer(event.readings());
        }
    }

    void changed(@Observes(during = TransactionPhase.AFTER_SUCCESS) RulesChanged event) {
        stale = true;
    }

    void changed(@Observes(during = TransactionPhase.AFTER_SUCCESS) FleetChanged event) {
        stale = true;
    }

    private void run() {
        try {
            while (stopping.getCount() > 0) {
                turn();
            }
        } catch (InterruptedException e) {
            LOG.debug("the rules were interrupted");
        }
    }

    private void turn() throws InterruptedException {
        try {
            if (!begun) {
                folds.begin(pending);
                refreshed = clock.instant();
                begun = true;
            }
            List<Reading> batch = inbox.next(WAIT);
            refresh(batch);
            judge(batch);
            again();
            look();
            folds.save();
            deliver();
            failing = false;
        } catch (RuntimeException e) {
            failed(e);
            stopping.await(WAIT.toMillis(), TimeUnit.MILLISECONDS);
        }
    }

    private void failed(RuntimeException e) {
        if (!failing) {
            LOG.warn("The rules wait and try again; nothing that was stored goes unjudged", e);
        }
        failing = true;
    }

    private boolean due(Instant last, Duration every) {
        Instant now = clock.instant();
        return last == Instant.MIN || !now.isBefore(last.plus(every)) || now.isBefore(last);
    }

    /** After waiting, since a reading may be of a device that was added meanwhile. */
    private void refresh(List<Reading> waiting) {
        if (stale || due(refreshed, REFRESH_EVERY)) {
            stale = false;
            try {
                folds.refresh(pending);
            } catch (RuntimeException e) {
                stale = true;
                inbox.lost(waiting);
                throw e;
            }
            refreshed = clock.instant();
        }
    }

    private void judge(List<Reading> batch) {
        if (!batch.isEmpty()) {
            time.record(() -> batch.stream()
                    .sorted(Comparator.comparing(Reading::at))
                    .forEach(reading -> folds.take(reading, pending)));
            judged.increment(batch.size());
        }
    }

    private void again() {
        inbox.takeLost().ifPresent(since -> {
            LOG.infof("The rules were behind; readings since %s are gone through again", since);
            try {
                folds.replay(since, pending);
            } catch (RuntimeException e) {
                inbox.lost(since);
                throw e;
            }
        });
    }

    private void look() {
        if (due(lookedAtEvents, EVENTS_EVERY)) {
            folds.events(pending);
            lookedAtEvents = clock.instant();
        }
        if (due(lookedAtService, SERVICE_EVERY)) {
            folds.service(figures.take(clock.instant()), SERVICE_EVERY, pending);
            lookedAtService = clock.instant();
        }
    }

    /** Hands signals on. While the database is away they wait; one that cannot be taken does not hold up the others. */
    private void deliver() {
        if (pending.isEmpty()) {
            return;
        }
        try {
            sink.accept(List.copyOf(pending));
        } catch (RuntimeException e) {
            if (isAway(e)) {
                throw e;
            }
            LOG.error("Signals could not be taken together; they are handed on one by one", e);
            pending.forEach(this::deliverOne);
        }
        told.increment(pending.size());
        pending.clear();
    }

    private void deliverOne(Signal signal) {
        try {
            sink.accept(List.of(signal));
        } catch (RuntimeException e) {
            LOG.errorf(e, "A signal could not be taken and is dropped: %s", signal);
        }
    }

    /** Whether the database is the trouble, and not what it was given: SQLSTATE classes 22, 23 and 42 speak of that. */
    private static boolean isAway(Throwable e) {
        for (Throwable cause = e; cause != null; cause = cause.getCause()) {
            if (cause instanceof SQLException sql) {
                String state = sql.getSQLState();
                return state == null || !state.startsWith("22") && !state.startsWith("23") && !state.startsWith("42");
            }
        }
        return false;
    }
}
