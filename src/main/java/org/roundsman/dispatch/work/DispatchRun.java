package org.roundsman.dispatch.work;

import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.scheduler.Scheduled;
import io.quarkus.scheduler.Scheduled.ConcurrentExecution;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import java.security.SecureRandom;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.BooleanSupplier;
import org.jboss.logging.Logger;
import org.roundsman.dispatch.store.QueueTable;
import org.roundsman.mail.MailServer;

/**
 * Keeps reports going. They are built and printed one after the other on one thread of low priority, so that rounds and pages come
 * first; mails go out on another.
 */
@ApplicationScoped
class DispatchRun {

    private static final Logger LOG = Logger.getLogger(DispatchRun.class);
    private static final long STOP_SECONDS = 5;

    private final Parts parts;
    private final Builder builder;
    private final Revisions revisions;
    private final Post post;
    private final DispatchMeters meters;
    private final BooleanSupplier mailOpen;
    private final ExecutorService worker = alone("report-builder", Thread.MIN_PRIORITY);
    private final ExecutorService sender = alone("report-sender", Thread.NORM_PRIORITY);
    private final AtomicBoolean building = new AtomicBoolean();
    private final AtomicBoolean sending = new AtomicBoolean();
    private volatile boolean begun;
    private volatile boolean failing;
    private volatile boolean stopping;

    @Inject
    DispatchRun(Parts parts, DispatchMeters meters, MailServer mail) {
        this.parts = parts;
        this.meters = meters;
        this.builder = new Builder(parts, meters);
        this.revisions = new Revisions(parts);
        this.mailOpen = () -> mail.state().ready();
        Pauses pauses = new Pauses(parts.config().firstRetry(), parts.config().longestRetry(), new SecureRandom());
        this.post = new Post(parts, mail::send, pauses);
    }

    private static ExecutorService alone(String name, int priority) {
        return Executors.newSingleThreadExecutor(work -> {
            Thread thread = new Thread(work, name);
            thread.setDaemon(true);
            thread.setPriority(priority);
            return thread;
        });
    }

    @Scheduled(every = "2s", delayed = "10s", concurrentExecution = ConcurrentExecution.SKIP)
    void work() {
        if (!atWork()) {
            return;
        }
        hand(worker, building, this::build);
        if (mailOpen.getAsBoolean()) {
            hand(sender, sending, () -> whileThereIs(post::step));
        }
    }

    private boolean atWork() {
        return parts.config().enabled() && !stopping;
    }

    private void build() {
        if (!begun) {
            builder.restart();
            begun = true;
        }
        whileThereIs(() -> {
            boolean done = builder.step();
            meters.waiting(new QueueTable(parts.store().rows()).waiting());
            return done;
        });
        if (!stopping) {
            revisions.step(); // one at a time, and only when nothing waits to be built
        }
    }

    private void whileThereIs(BooleanSupplier step) {
        boolean more = true;
        while (more && !stopping) {
            more = step.getAsBoolean();
        }
    }

    @Scheduled(every = "1m", delayed = "30s", concurrentExecution = ConcurrentExecution.SKIP)
    void schedule() {
        if (atWork()) {
            worker.execute(() -> guarded("Plans of reports wait", () -> new Schedule(parts).look()));
        }
    }

    @Scheduled(every = "24h", delayed = "10m", concurrentExecution = ConcurrentExecution.SKIP)
    void daily() {
        if (atWork()) {
            worker.execute(() -> guarded("Old reports were not removed", () -> new Retention(parts).look()));
        }
    }

    /** One at a time: what comes while it is at work finds it there. While the database is away, the log says so once. */
    private void hand(ExecutorService thread, AtomicBoolean busy, Runnable work) {
        if (busy.compareAndSet(false, true)) {
            thread.execute(() -> {
                try {
                    work.run();
                    failing = false;
                } catch (RuntimeException e) {
                    if (!failing) {
                        LOG.warnf("Reports wait: %s", e.getMessage());
                    }
                    failing = true;
                } finally {
                    busy.set(false);
                }
            });
        }
    }

    private static void guarded(String otherwise, Runnable work) {
        try {
            work.run();
        } catch (RuntimeException e) {
            LOG.warnf("%s: %s", otherwise, e.getMessage());
        }
    }

    /** What is under way may end; what does not in time is done again after the next start. */
    void stop(@Observes ShutdownEvent event) {
        stopping = true;
        sender.shutdown();
        worker.shutdown();
        try {
            if (!worker.awaitTermination(STOP_SECONDS, TimeUnit.SECONDS)
                    || !sender.awaitTermination(STOP_SECONDS, TimeUnit.SECONDS)) {
                LOG.info("A report was under way at the stop; it is done again after the next start");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
