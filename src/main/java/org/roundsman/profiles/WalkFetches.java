package org.roundsman.profiles;

import jakarta.annotation.PreDestroy;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.jboss.logging.Logger;
import org.roundsman.audit.Actor;
import org.roundsman.audit.AuditTrail;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.InputRejected;
import org.roundsman.measure.Outcome;
import org.roundsman.snmp.Agent;
import org.roundsman.snmp.FetchedWalk;
import org.roundsman.snmp.SnmpVisitor;

/**
 * Reads everything that a device has, in the background, and keeps it as a walk. What is under way is forgotten when the
 * service stops: it is only to be asked again. Thread-safe.
 */
@ApplicationScoped
public class WalkFetches {

    private static final Logger LOG = Logger.getLogger(WalkFetches.class);
    private static final int MOST_REMEMBERED = 50;

    private final SnmpVisitor visitor;
    private final DeviceAgents agents;
    private final WalksConfig config;
    private final Keeping keeping;
    private final Clock clock;
    private final List<Running> all = new ArrayList<>();
    private final ExecutorService aside = Executors.newSingleThreadExecutor(task -> {
        Thread thread = new Thread(task, "walk-keeping");
        thread.setDaemon(true);
        return thread;
    });
    private long lastId;

    @Inject
    WalkFetches(SnmpVisitor visitor, DeviceAgents agents, WalksConfig config, Keeping keeping, Clock clock) {
        this.visitor = visitor;
        this.agents = agents;
        this.config = config;
        this.keeping = keeping;
        this.clock = clock;
    }

    /** How far it is. */
    public enum State {
        RUNNING,
        KEPT,
        FAILED
    }

    /**
     * What is to be read.
     *
     * @param blank take sysContact, sysName and sysLocation out before it is kept
     * @param laterOf the walk that this is to be the later one of, or empty for one of its own
     */
    public record Wish(long deviceId, String deviceName, long customerId, boolean blank, Optional<Long> laterOf) {}

    /**
     * One reading as a page shows it.
     *
     * @param variables so far
     * @param message why it failed, or empty
     * @param walkId where it was kept
     */
    public record Progress(
            long id, Wish wish, Instant since, int variables, State state, String message, Optional<Long> walkId) {}

    private static final class Running {
        Progress progress;
        volatile boolean stopped;

        synchronized Progress progress() {
            return progress;
        }

        synchronized void set(int variables, State state, String message, Long walkId) {
            Progress p = progress;
            progress =
                    new Progress(p.id(), p.wish(), p.since(), variables, state, message, Optional.ofNullable(walkId));
        }
    }

    /** Keeps what was read, for the person who asked for it. */
    @ApplicationScoped
    static class Keeping {
        private final StoredWalks walks;
        private final AuditTrail audit;

        @Inject
        Keeping(StoredWalks walks, AuditTrail audit) {
            this.walks = walks;
            this.audit = audit;
        }

        Actor actor() {
            return audit.actor();
        }

        long keep(Wish wish, FetchedWalk walk, Actor actor) {
            return audit.as(actor, () -> {
                if (wish.laterOf().isPresent()) {
                    StoredWalk first = walks.find(
                                    CustomerScope.everyone(), wish.laterOf().get())
                            .orElseThrow(() -> WrittenProfiles.rejected("id", "the first walk was removed meanwhile"));
                    walks.addLater(first, walk.walk(), walk.at());
                    return first.id();
                }
                WalkDraft draft = new WalkDraft(
                        wish.deviceName(),
                        Optional.of(wish.customerId()),
                        Optional.of(wish.deviceId()),
                        wish.blank(),
                        walk.walk(),
                        walk.at(),
                        walk.remarks());
                return walks.add(draft).id();
            });
        }
    }

    /**
     * Begins to read a device; callers have seen to it that it is in the person's scope.
     *
     * @return a number to ask for the progress with
     * @throws InputRejected under {@code device} when it is being read already, or too many are
     */
    public synchronized long start(Wish wish) {
        List<Progress> running =
                all().stream().filter(p -> p.state() == State.RUNNING).toList();
        if (running.stream().anyMatch(p -> p.wish().deviceId() == wish.deviceId())) {
            throw WrittenProfiles.rejected("device", "this device is being read already");
        }
        if (running.size() >= config.atATime()) {
            throw WrittenProfiles.rejected(
                    "device", running.size() + " devices are being read already; wait for one of them to end");
        }
        Agent agent = agents.agent(wish.deviceId())
                .orElseThrow(() -> WrittenProfiles.rejected("device", "this device is not there any more"));
        Running one = new Running();
        one.progress = new Progress(++lastId, wish, clock.instant(), 0, State.RUNNING, "", Optional.empty());
        all.add(one);
        if (all.size() > MOST_REMEMBERED) {
            all.remove(0);
        }
        Actor actor = keeping.actor();
        visitor.walk(agent, config.bounds(), variables -> {
                    one.set(variables, State.RUNNING, "", null);
                    return !one.stopped;
                })
                .whenCompleteAsync((walk, fault) -> end(one, walk, fault, actor), aside);
        return lastId;
    }

    private void end(Running one, FetchedWalk walk, Throwable fault, Actor actor) {
        int variables = walk == null ? 0 : walk.walk().size();
        try {
            if (fault != null) {
                throw new IllegalStateException(fault);
            } else if (walk.outcome() != Outcome.ANSWERED) {
                one.set(variables, State.FAILED, walk.outcome().text(), null);
            } else {
                one.set(variables, State.KEPT, "", keeping.keep(one.progress().wish(), walk, actor));
            }
        } catch (InputRejected e) {
            one.set(variables, State.FAILED, String.join("; ", e.faults().values()), null);
        } catch (RuntimeException e) {
            LOG.errorf(
                    e,
                    "The walk of device %d could not be kept",
                    one.progress().wish().deviceId());
            one.set(variables, State.FAILED, "a fault of ours; the log has the details", null);
        }
    }

    /** All that are remembered, the latest first. */
    public synchronized List<Progress> all() {
        List<Progress> shown = new ArrayList<>();
        all.forEach(one -> shown.add(0, one.progress()));
        return shown;
    }

    public synchronized Optional<Progress> find(long id) {
        return all().stream().filter(p -> p.id() == id).findFirst();
    }

    /** Stops one; what was read so far is kept. */
    public synchronized void stop(long id) {
        all.stream().filter(one -> one.progress().id() == id).forEach(one -> one.stopped = true);
    }

    @PreDestroy
    void close() {
        all.forEach(one -> one.stopped = true);
        aside.shutdown();
    }
}
