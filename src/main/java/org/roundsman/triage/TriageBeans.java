package org.roundsman.triage;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import java.time.Clock;
import java.time.Duration;
import javax.sql.DataSource;
import org.roundsman.alarms.AlarmBook;
import org.roundsman.alarms.AlarmDesk;
import org.roundsman.planned.PlannedWork;
import org.roundsman.polling.Rounds;
import org.roundsman.readings.DeviceStates;
import org.roundsman.rules.RuleBook;
import org.roundsman.topology.Topology;
import org.roundsman.topology.WiringReads;
import org.roundsman.triage.store.FleetRows;
import org.roundsman.triage.watch.Tools;
import org.roundsman.triage.watch.Watch;

/** Gives the watch its tools. */
@ApplicationScoped
class TriageBeans {

    /** A device that waits to be asked again is not asked out of turn more often. */
    private static final Duration APART = Duration.ofSeconds(20);

    @Produces
    @Singleton
    Tools tools(DataSource database, Alarms alarms, Impacts impacts, Readers readers) {
        return new Tools(
                new FleetRows(database),
                readers.states(),
                readers.topology()::wiring,
                alarms.book(),
                alarms.desk(),
                alarms.rules()::current,
                impacts,
                alarms.planned()::now,
                readers.wiring()::readSoon,
                device -> readers.rounds().soon(device, APART),
                readers.rounds()::devices);
    }

    @Produces
    @Singleton
    Watch watch(Tools tools, Clock clock) {
        return new Watch(tools, clock);
    }

    /** Where alarms are written, and by what rules. */
    record Alarms(AlarmBook book, AlarmDesk desk, RuleBook rules, PlannedWork planned) {}

    /** Where devices are asked and read about. */
    record Readers(DeviceStates states, Topology topology, WiringReads wiring, Rounds rounds) {}

    @Produces
    @Singleton
    Alarms alarms(AlarmBook book, AlarmDesk desk, RuleBook rules, PlannedWork planned) {
        return new Alarms(book, desk, rules, planned);
    }

    @Produces
    @Singleton
    Readers readers(DeviceStates states, Topology topology, WiringReads wiring, Rounds rounds) {
        return new Readers(states, topology, wiring, rounds);
    }
}
