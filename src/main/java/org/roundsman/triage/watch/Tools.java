package org.roundsman.triage.watch;

import java.util.function.IntSupplier;
import java.util.function.LongConsumer;
import java.util.function.LongFunction;
import java.util.function.Supplier;
import org.roundsman.alarms.AlarmBook;
import org.roundsman.alarms.AlarmDesk;
import org.roundsman.planned.PlannedNow;
import org.roundsman.readings.DeviceStates;
import org.roundsman.rules.RuleSet;
import org.roundsman.topology.SiteWiring;
import org.roundsman.triage.Impacts;
import org.roundsman.triage.store.FleetRows;

/**
 * What the watch works with.
 *
 * @param readPorts has the states of a device's ports read soon; must not block
 * @param askSoon has a device asked soon, out of its turn; must not block
 * @param polled how many devices rounds are made of by this process
 */
public record Tools(
        FleetRows fleet,
        DeviceStates states,
        LongFunction<SiteWiring> wiring,
        AlarmBook book,
        AlarmDesk desk,
        Supplier<RuleSet> rules,
        Impacts impacts,
        Supplier<PlannedNow> planned,
        LongConsumer readPorts,
        LongConsumer askSoon,
        IntSupplier polled) {}
