package org.roundsman.web.discovery;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import org.roundsman.discovery.Sweep;
import org.roundsman.discovery.SweepProgress;
import org.roundsman.discovery.SweepState;
import org.roundsman.web.page.Words;

/** How far a sweep is, in words. */
record ProgressView(
        boolean running,
        boolean unfinished,
        String title,
        int asked,
        int total,
        int percent,
        String share,
        String when,
        String counts,
        String remark) {

    static ProgressView of(SweepProgress progress, ZoneId zone, Clock clock) {
        Sweep sweep = progress.sweep();
        return new ProgressView(
                sweep.isRunning(),
                progress.isUnfinished(),
                title(progress),
                progress.asked(),
                sweep.total(),
                progress.percent(),
                Words.count(progress.asked()) + " of " + Words.many(sweep.total(), "address", "addresses"),
                when(sweep, zone, clock.instant()),
                counts(progress),
                sweep.remark());
    }

    private static String title(SweepProgress progress) {
        if (progress.waiting()) {
            return "The sweep waits for others to end";
        }
        SweepState state = progress.sweep().state();
        return switch (state) {
            case RUNNING -> "The sweep is running";
            case DONE -> "The sweep is done";
            case CANCELLED -> "The sweep was cancelled";
        };
    }

    private static String when(Sweep sweep, ZoneId zone, Instant now) {
        String begun = "Begun " + Words.moment(sweep.startedAt(), zone) + " by " + sweep.startedBy();
        return sweep.endedAt()
                .map(at -> begun + ", ended " + Words.ago(at, now) + ".")
                .orElse(begun + ".");
    }

    private static String counts(SweepProgress progress) {
        return Words.count(progress.answered()) + " answered, " + Words.count(progress.refused())
                + " refused our credentials, " + Words.count(progress.closed()) + " with nothing at the SNMP port, "
                + Words.count(progress.silent()) + " silent"
                + (progress.leftOut() == 0 ? "" : ", " + Words.count(progress.leftOut()) + " set aside and not asked")
                + ".";
    }
}
