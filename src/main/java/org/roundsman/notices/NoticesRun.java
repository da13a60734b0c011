package org.roundsman.notices;

import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.scheduler.Scheduled;
import io.quarkus.scheduler.Scheduled.ConcurrentExecution;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import java.security.SecureRandom;
import java.time.Instant;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.jboss.logging.Logger;
import org.roundsman.mail.MailServer;
import org.roundsman.notices.send.WebhookPost;
import org.roundsman.notices.store.OutboxTable;
import org.roundsman.notices.store.ThreadTable;
import org.roundsman.system.Sealer;

/** Keeps notices going: looks at alarms, digests and the outbox every few seconds, and sends on threads of its own. */
@ApplicationScoped
class NoticesRun {

    private static final Logger LOG = Logger.getLogger(NoticesRun.class);
    private static final int SENDERS = 4;

    private final Surroundings at;
    private final Telling telling;
    private final Digesting digesting;
    private final Sending sending;
    private final AtomicInteger underWay = new AtomicInteger();
    private final ExecutorService senders = Executors.newFixedThreadPool(SENDERS, work -> {
        Thread thread = new Thread(work, "notice-sender");
        thread.setDaemon(true);
        return thread;
    });
    private boolean failing;

    @Inject
    NoticesRun(Surroundings at, MailServer mail, Sealer sealer) {
        this.at = at;
        this.telling = new Telling(at);
        this.digesting = new Digesting(at);
        WebhookPost post =
                new WebhookPost(at.config().webhookTimeout(), at.config().webhookLocalAllowed());
        this.sending = new Sending(at, new Carriers(at.database(), mail, post, sealer, at.clock()), new SecureRandom());
    }

    @Scheduled(every = "${roundsman.notices.every:5s}", delayed = "5s", concurrentExecution = ConcurrentExecution.SKIP)
    void tell() {
        run(() -> {
            telling.run();
            digesting.run();
        });
    }

    @Scheduled(every = "1s", delayed = "5s", concurrentExecution = ConcurrentExecution.SKIP)
    void send() {
        int free = SENDERS - underWay.get();
        if (free > 0) {
            run(() -> sending.claim(free).forEach(this::hand));
        }
    }

    private void hand(OutboxTable.Claimed message) {
        underWay.incrementAndGet();
        senders.execute(() -> {
            try {
                sending.attempt(message);
            } catch (RuntimeException e) {
                LOG.warnf(
                        "How message %d ended could not be written down; it is tried again: %s",
                        message.id(), e.getMessage());
            } finally {
                underWay.decrementAndGet();
            }
        });
    }

    @Scheduled(every = "1h", delayed = "1m", concurrentExecution = ConcurrentExecution.SKIP)
    void removeOld() {
        run(() -> {
            Instant before = at.now().minus(at.config().keep());
            at.whole(connection ->
                    OutboxTable.removeOld(connection, before) + ThreadTable.removeOld(connection, before));
        });
    }

    private void run(Runnable work) {
        if (!at.config().enabled()) {
            return;
        }
        try {
            work.run();
            failing = false;
        } catch (RuntimeException e) {
            if (!failing) {
                LOG.warnf("Notices wait: %s", e.getMessage());
            }
            failing = true;
        }
    }

    /** What is under way may end; what does not in time is tried again after the next start. */
    void stop(@Observes ShutdownEvent event) {
        senders.shutdown();
        try {
            if (!senders.awaitTermination(at.config().webhookTimeout().toSeconds(), TimeUnit.SECONDS)) {
                LOG.info("A notice was under way at the stop; it is tried again after the next start");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
