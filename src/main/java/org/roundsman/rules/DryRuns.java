package org.roundsman.rules;

import io.quarkus.runtime.ShutdownEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.UnaryOperator;
import org.jboss.logging.Logger;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.InputRejected;
import org.roundsman.rules.past.Tryer;
import org.roundsman.rules.store.DeviceTable.Watched;

/**
 * Tries other values of a rule over what is stored, one try after the other, in the background. Results are kept in memory
 * until the service ends, the last ones only. Thread-safe.
 */
@ApplicationScoped
public class DryRuns {

    private static final Logger LOG = Logger.getLogger(DryRuns.class);
    private static final int KEPT = 30;
    private static final int MOST_WAITING = 5;

    private final RuleBook book;
    private final Tryer tryer;
    private final Clock clock;
    private final RulesConfig config;
    private final Map<Long, DryRun> runs = new LinkedHashMap<>();
    private long lastId;
    private final ExecutorService thread = Executors.newSingleThreadExecutor(task -> {
        Thread made = new Thread(task, "rules-tries");
        made.setDaemon(true);
        return made;
    });

    @Inject
    DryRuns(RuleBook book, Tryer tryer, Clock clock, RulesConfig config) {
        this.book = book;
        this.tryer = tryer;
        this.clock = clock;
        this.config = config;
    }

    /**
     * Begins to try.
     *
     * @param scope of whoever asks: nothing else is looked at
     * @param by sign-in name
     * @throws InputRejected naming each field that cannot be taken: those of the wish, {@code from}, {@code to}
     */
    public DryRun start(CustomerScope scope, RuleBook.Wish wish, Instant from, Instant to, String by) {
        checkRange(wish, from, to);
        RuleSet tried = book.tried(scope, wish);
        String name = tried.nameOf(wish.type(), wish.level(), wish.targetId());
        Map<Long, Watched> devices = tryer.devices(scope, wish.level(), wish.targetId());
        DryRun run;
        synchronized (runs) {
            long waiting =
                    runs.values().stream().filter(one -> !one.state().over()).count();
            if (waiting >= MOST_WAITING) {
                throw new InputRejected(Map.of("from", "other tries are under way: wait for them, or cancel one"));
            }
            run = new DryRun(
                    ++lastId,
                    scope,
                    wish,
                    name,
                    from,
                    to,
                    DryRun.State.WAITING,
                    0,
                    devices.size(),
                    by,
                    clock.instant(),
                    "",
                    Optional.empty());
            runs.put(run.id(), run);
            while (runs.size() > KEPT) {
                runs.remove(runs.keySet().iterator().next());
            }
        }
        thread.execute(() -> work(run, tried, devices));
        return run;
    }

    /** Empty when there is none, or it is of a wider scope. */
    public Optional<DryRun> find(CustomerScope scope, long id) {
        synchronized (runs) {
            return Optional.ofNullable(runs.get(id))
                    .filter(run -> scope.onlyCustomer() == null || scope.equals(run.owner()));
        }
    }

    /** Ends it soon; of one that is over, nothing changes. False when there is none in the scope. */
    public boolean cancel(CustomerScope scope, long id) {
        if (find(scope, id).isEmpty()) {
            return false;
        }
        update(id, run -> run.state().over() ? run : with(run, DryRun.State.CANCELLED, "", Optional.empty()));
        return true;
    }

    void stop(@Observes @Priority(80) ShutdownEvent event) {
        synchronized (runs) {
            runs.clear();
        }
        thread.shutdownNow();
    }

    private void checkRange(RuleBook.Wish wish, Instant from, Instant to) {
        if (!ShippedRules.of(wish.type()).hasPast()) {
            throw new InputRejected(Map.of("from", "nothing is stored that this rule could be tried on"));
        }
        if (!from.isBefore(to)) {
            throw new InputRejected(Map.of("to", "must be after the begin"));
        }
        if (to.isAfter(clock.instant().plus(Duration.ofDays(1)))) {
            throw new InputRejected(Map.of("to", "lies in the future"));
        }
        if (Duration.between(from, to).toDays() > config.tryDays()) {
            throw new InputRejected(Map.of("from", "at most " + config.tryDays() + " days can be tried at once"));
        }
    }

    private void work(DryRun run, RuleSet tried, Map<Long, Watched> devices) {
        long id = run.id();
        if (stopped(id)) {
            return;
        }
        update(id, one -> with(one, DryRun.State.RUNNING, "", Optional.empty()));
        try {
            DryRun.Result result = tryer.run(
                    run,
                    book.current(),
                    tried,
                    devices,
                    count -> update(id, one -> counted(one, count)),
                    () -> stopped(id));
            update(id, one -> one.state().over() ? one : with(one, DryRun.State.DONE, "", Optional.of(result)));
        } catch (RuntimeException e) {
            LOG.warnf(
                    e,
                    "Trying other values of rule %s failed",
                    run.wish().type().id());
            String trouble = "It failed: " + e.getMessage();
            update(id, one -> one.state().over() ? one : with(one, DryRun.State.FAILED, trouble, Optional.empty()));
        }
    }

    private boolean stopped(long id) {
        synchronized (runs) {
            DryRun run = runs.get(id);
            return run == null || run.state().over();
        }
    }

    private void update(long id, UnaryOperator<DryRun> change) {
        synchronized (runs) {
            runs.computeIfPresent(id, (key, run) -> change.apply(run));
        }
    }

    private static DryRun counted(DryRun run, int more) {
        return copy(run, run.state(), run.done() + more, run.trouble(), run.result());
    }

    private static DryRun with(DryRun run, DryRun.State state, String trouble, Optional<DryRun.Result> result) {
        return copy(run, state, run.done(), trouble, result);
    }

    private static DryRun copy(
            DryRun run, DryRun.State state, int done, String trouble, Optional<DryRun.Result> result) {
        return new DryRun(
                run.id(),
                run.owner(),
                run.wish(),
                run.targetName(),
                run.from(),
                run.to(),
                state,
                done,
                run.total(),
                run.startedBy(),
                run.startedAt(),
                trouble,
                result);
    }
}
