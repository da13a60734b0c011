package org.roundsman.claims;

import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.List;
import java.util.concurrent.locks.ReentrantLock;
import javax.sql.DataSource;
import org.jboss.logging.Logger;
import org.roundsman.claims.store.FollowTable;

/**
 * Follows the serial numbers that devices say. It reads the timeline from where it left off, so that a unit that came and
 * went between two looks is known as well, and then holds what every device says today against who is known to stand there.
 * Each word is judged by {@link StayRules}, to which the same word twice, or a late one, means nothing: after a crash it may
 * begin again anywhere.
 */
@ApplicationScoped
public class UnitFollower {

    private static final Logger LOG = Logger.getLogger(UnitFollower.class);
    private static final int PORTION = 1_000;

    /** Events are numbered before they are committed: one with a smaller number may be seen later than its successors. */
    private static final long LATE = 2_000;

    private final ReentrantLock one = new ReentrantLock();
    private final FollowTable table;
    private final Stays stays;
    private final ClaimsConfig config;

    @Inject
    UnitFollower(DataSource database, Stays stays, ClaimsConfig config) {
        this.table = new FollowTable(database);
        this.stays = stays;
        this.config = config;
    }

    @Scheduled(
            every = "${roundsman.claims.every:10s}",
            delayed = "5s",
            concurrentExecution = Scheduled.ConcurrentExecution.SKIP)
    void run() {
        if (!config.follow()) {
            return;
        }
        try {
            int begun = look();
            if (begun > 0) {
                LOG.infof("%d units are known to stand where their devices say so", begun);
            }
        } catch (IllegalStateException e) {
            LOG.warnf("Which unit stands where is not followed for a moment: %s", e.getMessage());
        }
    }

    /** Looks at everything once; returns how many places had no unit before. */
    public int look() {
        one.lock();
        try {
            int begun = table.beginAll();
            readTimeline();
            settle();
            return begun;
        } finally {
            one.unlock();
        }
    }

    private void readTimeline() {
        long last = table.lastEvent();
        long from = table.cursor().map(done -> Math.max(0, done - LATE)).orElse(0L);
        List<FollowTable.Spoken> portion;
        do {
            portion = table.spoken(from, PORTION);
            for (FollowTable.Spoken spoken : portion) {
                stays.hear(spoken.deviceId(), StayRules.Said.once(spoken.serial(), spoken.at()));
                from = spoken.eventId();
            }
        } while (portion.size() == PORTION);
        table.cursor(last);
    }

    private void settle() {
        for (long device : table.unsettled(PORTION)) {
            stays.hear(device);
        }
    }
}
