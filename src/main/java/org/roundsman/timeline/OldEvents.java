package org.roundsman.timeline;

import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.time.ZoneOffset;
import javax.sql.DataSource;
import org.jboss.logging.Logger;

/** Deletes events that are past their time, every hour, in portions so that nobody waits for it. */
@ApplicationScoped
public class OldEvents {

    private static final Logger LOG = Logger.getLogger(OldEvents.class);
    private static final int PORTION = 10_000;
    private static final int MOST_PORTIONS = 1_000;

    private final DataSource database;
    private final Clock clock;
    private final int keepDays;

    @Inject
    OldEvents(DataSource database, Clock clock, TimelineConfig config) {
        this(database, clock, config.keepDays());
    }

    OldEvents(DataSource database, Clock clock, int keepDays) {
        this.database = database;
        this.clock = clock;
        this.keepDays = keepDays;
    }

    @Scheduled(every = "1h", delayed = "90s", concurrentExecution = Scheduled.ConcurrentExecution.SKIP)
    void run() {
        try {
            long deleted = delete();
            if (deleted > 0) {
                LOG.infof("%d events older than %d days were deleted", deleted, keepDays);
            }
        } catch (SQLException e) {
            LOG.warnf("Old events stay for another hour, the database does not delete them: %s", e.getMessage());
        }
    }

    /** Deletes what is too old; returns how many events that were. */
    long delete() throws SQLException {
        long all = 0;
        for (int i = 0; i < MOST_PORTIONS; i++) {
            int portion = deletePortion();
            all += portion;
            if (portion < PORTION) {
                break;
            }
        }
        return all;
    }

    private int deletePortion() throws SQLException {
        try (Connection connection = database.getConnection();
                PreparedStatement statement = connection.prepareStatement("delete from device_event where id in"
                        + " (select id from device_event where at < ? limit " + PORTION + ")")) {
            statement.setObject(
                    1, clock.instant().minus(Duration.ofDays(keepDays)).atOffset(ZoneOffset.UTC));
            return statement.executeUpdate();
        }
    }
}
