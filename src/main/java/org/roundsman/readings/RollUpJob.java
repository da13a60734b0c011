package org.roundsman.readings;

import io.quarkus.scheduler.Scheduled;
import io.quarkus.scheduler.Scheduled.ConcurrentExecution;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import javax.sql.DataSource;
import org.jboss.logging.Logger;
import org.roundsman.readings.rollup.Retention;
import org.roundsman.readings.rollup.RollUp;
import org.roundsman.readings.store.Partitions;

/** Builds roll-ups every minute; makes and drops partitions every hour. */
@ApplicationScoped
class RollUpJob {

    private static final Logger LOG = Logger.getLogger(RollUpJob.class);

    private final Clock clock;
    private final RollUp rollUp;
    private final Retention retention;
    private final Partitions partitions;
    private boolean failing;

    @Inject
    RollUpJob(DataSource source, Clock clock, ReadingsSettings settings) {
        this.clock = clock;
        this.rollUp = new RollUp(source, clock, settings.currentDayEvery());
        this.retention = new Retention(source, clock, settings.rawDays(), settings.quarterMonths());
        this.partitions = new Partitions(source);
    }

    @Scheduled(
            every = "${roundsman.readings.roll-up-every:60s}",
            delayed = "5s",
            concurrentExecution = ConcurrentExecution.SKIP)
    void rollUp() {
        run("Roll-ups", rollUp::run);
    }

    @Scheduled(every = "1h", delayed = "2s", concurrentExecution = ConcurrentExecution.SKIP)
    void partitions() {
        run("Partitions", () -> {
            partitions.forget();
            partitions.forReadings(List.of(clock.instant(), clock.instant().plus(Duration.ofDays(1))));
            partitions.forQuarters(List.of(clock.instant(), clock.instant().plus(Duration.ofDays(2))));
            retention.run();
            partitions.summarise();
        });
    }

    private interface Work {
        void run() throws SQLException;
    }

    private void run(String what, Work work) {
        try {
            work.run();
            failing = false;
        } catch (SQLException e) {
            if (!failing) {
                LOG.warnf("%s wait, the database does not take them: %s", what, e.getMessage());
            }
            failing = true;
        }
    }
}
