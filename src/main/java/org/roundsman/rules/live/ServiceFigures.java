package org.roundsman.rules.live;

import io.micrometer.core.instrument.MeterRegistry;
import io.micrometer.core.instrument.Timer;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.file.FileStore;
import java.nio.file.Files;
import java.time.Duration;
import java.time.Instant;
import java.util.EnumMap;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.jboss.logging.Logger;
import org.roundsman.alarms.AlarmType;
import org.roundsman.readings.Backlog;
import org.roundsman.readings.BacklogSource;
import org.roundsman.system.DataFolder;

/** Measures how the service itself is doing. A figure that cannot be had is missing. Used by one thread. */
@ApplicationScoped
class ServiceFigures {

    private static final Logger LOG = Logger.getLogger(ServiceFigures.class);
    private static final String LAG = "roundsman.rounds.lag";

    private final MeterRegistry registry;
    private final BacklogSource backlog;
    private final DataFolder folder;
    private long rounds;
    private double seconds;
    private boolean diskUnread;

    @Inject
    ServiceFigures(MeterRegistry registry, BacklogSource backlog, DataFolder folder) {
        this.registry = registry;
        this.backlog = backlog;
        this.folder = folder;
    }

    /** The figures since they were taken last. */
    Map<AlarmType, Double> take(Instant now) {
        Map<AlarmType, Double> figures = new EnumMap<>(AlarmType.class);
        figures.put(AlarmType.POLLER_LATE, late());
        figures.put(AlarmType.STORING_BEHIND, behind(now));
        figures.put(AlarmType.DISK_FILLING, disk());
        return figures;
    }

    /** By how many seconds rounds began after their time, on average; not a number when none began. */
    private double late() {
        Timer timer = registry.find(LAG).timer();
        if (timer == null) {
            return Double.NaN;
        }
        long count = timer.count();
        double total = timer.totalTime(TimeUnit.MILLISECONDS) / 1_000;
        double late = count == rounds ? Double.NaN : Math.max(0, total - seconds) / (count - rounds);
        rounds = count;
        seconds = total;
        return late;
    }

    /** Age in seconds of what waits longest; 0 when nothing does. */
    private double behind(Instant now) {
        Backlog waiting = backlog.backlog();
        Instant since = waiting.failingSince().or(waiting::oldest).orElse(now);
        Instant oldest = waiting.oldest().orElse(since);
        Instant first = oldest.isBefore(since) ? oldest : since;
        return Math.max(0, Duration.between(first, now).toMillis() / 1_000.0);
    }

    /** How full the disk is, in per cent. */
    private double disk() {
        try {
            FileStore store = Files.getFileStore(folder.path());
            diskUnread = false;
            // what is set aside for others counts on neither side, as in the column Use% of df
            double used = store.getTotalSpace() - store.getUnallocatedSpace();
            return 100 * used / (used + store.getUsableSpace());
        } catch (IOException e) {
            if (!diskUnread) {
                LOG.warnf("How full the disk of %s is cannot be read: %s", folder.path(), e.getMessage());
            }
            diskUnread = true;
            return Double.NaN;
        }
    }
}
