package org.roundsman.alarms;

import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import org.jboss.logging.Logger;

/** Has the desk tidied every few seconds: shelves end at their time, and what was removed has no active alarms. */
@ApplicationScoped
class AlarmTidying {

    private static final Logger LOG = Logger.getLogger(AlarmTidying.class);

    private final AlarmDesk desk;

    @Inject
    AlarmTidying(AlarmDesk desk) {
        this.desk = desk;
    }

    @Scheduled(every = "10s", delayed = "20s", concurrentExecution = Scheduled.ConcurrentExecution.SKIP)
    void run() {
        try {
            desk.tidy();
        } catch (IllegalStateException e) {
            LOG.warnf("Alarms were not tidied: %s", e.getMessage());
        }
    }
}
