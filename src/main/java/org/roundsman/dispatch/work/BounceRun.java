package org.roundsman.dispatch.work;

import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import org.jboss.logging.Logger;
import org.roundsman.mail.BounceReader;
import org.roundsman.mail.MailFailure;

/** Reads every few minutes which mails of reports came back. */
@ApplicationScoped
class BounceRun {

    private static final Logger LOG = Logger.getLogger(BounceRun.class);

    private final Parts parts;
    private final BounceReader reader;

    @Inject
    BounceRun(Parts parts, BounceReader reader) {
        this.parts = parts;
        this.reader = reader;
    }

    @Scheduled(
            every = "${roundsman.mail.bounces.every:5m}",
            delayed = "1m",
            concurrentExecution = Scheduled.ConcurrentExecution.SKIP)
    void read() {
        if (!parts.config().enabled() || !reader.open()) {
            return;
        }
        try {
            reader.read(new Bounced(parts));
        } catch (MailFailure | RuntimeException e) {
            LOG.warnf("Mails that came back were not read: %s", e.getMessage());
        }
    }
}
