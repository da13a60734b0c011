package org.roundsman.firmware;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.stream.Collectors;
import javax.sql.DataSource;
import org.roundsman.firmware.store.PeopleTable;
import org.roundsman.firmware.work.Fitting;
import org.roundsman.firmware.work.WorkList;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.planned.PlannedNow;
import org.roundsman.planned.PlannedWork;

/** What has to be done about firmware, in which order, and when it can be done. Thread-safe. */
@ApplicationScoped
public class FirmwareWork {

    /** Windows that begin later are not looked at. */
    public static final Duration AHEAD = Duration.ofDays(90);

    private final FirmwareStates states;
    private final PlannedWork planned;
    private final PeopleTable people;
    private final FirmwareConfig config;
    private final Clock clock;

    @Inject
    FirmwareWork(FirmwareStates states, PlannedWork planned, DataSource database, FirmwareConfig config, Clock clock) {
        this.states = states;
        this.planned = planned;
        this.people = new PeopleTable(database);
        this.config = config;
        this.clock = clock;
    }

    /** The work of every site in the scope, the riskiest first. */
    public List<WorkItem> list(CustomerScope scope) {
        Instant now = clock.instant();
        List<FirmwareState> all = states.all(scope);
        var sites = all.stream()
                .filter(state -> state.mixed() || WorkList.asksForWork(state.status()))
                .map(state -> state.place().siteId())
                .collect(Collectors.toSet());
        PlannedNow windows = planned.now();
        Fitting fitting =
                new Fitting(site -> windows.coming(site, now, now.plus(AHEAD)), Duration.ofMinutes(minutesEach()), now);
        return WorkList.of(all, people.busiest(sites, now.minus(Duration.ofDays(7)))).stream()
                .map(fitting::fit)
                .toList();
    }

    /** Minutes that are reckoned for each device. */
    public int minutesEach() {
        return config.minutesPerDevice();
    }
}
