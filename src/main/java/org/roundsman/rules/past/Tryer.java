package org.roundsman.rules.past;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.BooleanSupplier;
import java.util.function.IntConsumer;
import org.roundsman.alarms.PastAlarms;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.readings.DeviceHistory;
import org.roundsman.readings.PastReadings;
import org.roundsman.rules.DryRun;
import org.roundsman.rules.RuleLevel;
import org.roundsman.rules.RuleSet;
import org.roundsman.rules.live.SightTimes;
import org.roundsman.rules.store.DeviceTable;
import org.roundsman.rules.store.DeviceTable.Watched;
import org.roundsman.rules.store.MemoryTable;
import org.roundsman.timeline.PastEvents;

/** Gathers what a try needs, and makes it. Thread-safe. */
@ApplicationScoped
public class Tryer {

    private final DeviceTable devices;
    private final MemoryTable memories;
    private final PastReadings readings;
    private final PastEvents events;
    private final DeviceHistory history;
    private PastAlarms alarms;

    @Inject
    public Tryer(
            DeviceTable devices,
            MemoryTable memories,
            PastReadings readings,
            PastEvents events,
            DeviceHistory history) {
        this.devices = devices;
        this.memories = memories;
        this.readings = readings;
        this.events = events;
        this.history = history;
    }

    /** Where it is kept when we saw nothing. */
    @Inject
    void alarms(PastAlarms past) {
        alarms = past;
    }

    /** The devices in the scope that values at that place are for. */
    public Map<Long, Watched> devices(CustomerScope scope, RuleLevel level, long targetId) {
        Map<Long, Watched> found = new LinkedHashMap<>();
        devices.all().forEach((id, watched) -> {
            if (scope.includes(watched.target().customerId())
                    && watched.target().idAt(level) == targetId) {
                found.put(id, watched);
            }
        });
        return found;
    }

    /** Tries; told how many more devices are done, asked whether to stop. */
    public DryRun.Result run(
            DryRun run, RuleSet current, RuleSet tried, Map<Long, Watched> of, IntConsumer done, BooleanSupplier stop) {
        TryWork.Question question = new TryWork.Question(run.wish().type(), current, tried, run.from(), run.to());
        TryWork.Past past = new TryWork.Past(
                readings, events, history, memories.all(), SightTimes.since(alarms, question.warmUp()));
        return new TryWork(past, question).run(of, done, stop);
    }
}
