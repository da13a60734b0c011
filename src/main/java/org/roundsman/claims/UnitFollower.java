package org.roundsman.claims;

import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Supplier;
import javax.sql.DataSource;
import org.jboss.logging.Logger;
import org.roundsman.claims.StayRules.Step;
import org.roundsman.claims.store.FollowTable;
import org.roundsman.fleet.InputRejected;

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
    private final Clock clock;

    @Inject
    UnitFollower(DataSource database, Stays stays, ClaimsConfig config, Clock clock) {
        this.table = new FollowTable(database);
        this.stays = stays;
        this.config = config;
        this.clock = clock;
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
            table.endLost(clock.instant().truncatedTo(ChronoUnit.MILLIS));
            List<Long> unsettled = table.unsettled(PORTION);
            int begun = unsettled.size() == PORTION ? table.beginAll() : 0;
            readTimeline();
            return begun + settle(begun == 0 ? unsettled : table.unsettled(PORTION));
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
                hear(
                        spoken.deviceId(),
                        () -> stays.hear(spoken.deviceId(), StayRules.Said.once(spoken.serial(), spoken.at())));
                from = spoken.eventId();
            }
        } while (portion.size() == PORTION);
        table.cursor(last);
    }

    private int settle(List<Long> devices) {
        int begun = 0;
        for (long device : devices) {
            begun += hear(device, () -> stays.hear(device)) instanceof Step.Begin ? 1 : 0;
        }
        return begun;
    }

    /** What one device says must not keep those after it from being heard: it is tried again at the next look. */
    private static Step hear(long device, Supplier<Step> work) {
        try {
            return work.get();
        } catch (IllegalStateException | InputRejected e) {
            LOG.warnf("Which unit stands in the place of device %d could not be stored: %s", device, e.getMessage());
            return new Step.Nothing();
        }
    }
}
