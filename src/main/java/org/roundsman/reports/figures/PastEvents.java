package org.roundsman.reports.figures;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import javax.sql.DataSource;
import org.roundsman.alarms.PastAlarms;
import org.roundsman.alarms.PastEpisode;
import org.roundsman.claims.ReplacedUnits;
import org.roundsman.claims.ReplacedUnits.Replaced;
import org.roundsman.firmware.FirmwareChange;
import org.roundsman.firmware.FirmwareChanges;
import org.roundsman.planned.PastWork;
import org.roundsman.planned.PlannedWindow;
import org.roundsman.reports.ReportSubject;

/**
 * What happened at the sites of a customer. Reaches a little beyond the days of a report, since each site has its own clock:
 * who counts something asks for the site's days.
 */
public record PastEvents(
        List<PastEpisode> episodes,
        List<Replaced> replaced,
        List<PlannedWindow> windows,
        List<FirmwareChange> changes) {

    /** The serial number of a new unit may be read later than it answers for the first time: slow facts come once an hour. */
    static final Duration READ_LATER = Duration.ofHours(2);

    public PastEvents {
        episodes = List.copyOf(episodes);
        replaced = List.copyOf(replaced);
        windows = List.copyOf(windows);
        changes = List.copyOf(changes);
    }

    /** Four statements. */
    public static PastEvents of(DataSource database, ReportSubject subject, Instant asOf) {
        Bounds bounds = new Bounds(subject, asOf);
        Instant from = bounds.earliest();
        Instant to = bounds.latest();
        long customer = subject.customerId();
        return new PastEvents(
                new PastAlarms(database).of(customer, from, to),
                new ReplacedUnits(database).of(customer, from, to.plus(READ_LATER)),
                new PastWork(database).of(customer, from),
                new FirmwareChanges(database).between(customer, from, to));
    }
}
