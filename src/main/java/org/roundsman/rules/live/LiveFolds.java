package org.roundsman.rules.live;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.jboss.logging.Logger;
import org.roundsman.alarms.AlarmBook;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.alarms.PastAlarms;
import org.roundsman.alarms.Resource;
import org.roundsman.alarms.Severity;
import org.roundsman.alarms.Signal;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.measure.Reading;
import org.roundsman.readings.PastReadings;
import org.roundsman.rules.Rule;
import org.roundsman.rules.RuleSet;
import org.roundsman.rules.RuleTarget;
import org.roundsman.rules.ShippedRules;
import org.roundsman.rules.fold.DeviceFold;
import org.roundsman.rules.fold.Memory;
import org.roundsman.rules.fold.ServiceFold;
import org.roundsman.rules.fold.Tuning;
import org.roundsman.rules.fold.Unseen;
import org.roundsman.rules.store.DeviceTable;
import org.roundsman.rules.store.MemoryTable;
import org.roundsman.timeline.EventSearch;
import org.roundsman.timeline.PastEvents;

/** The folds of all devices, kept in step with what is stored. Used by one thread. */
final class LiveFolds {

    private static final Logger LOG = Logger.getLogger(LiveFolds.class);
    private static final int EVENTS_AT_ONCE = 5_000;
    /** Numbers of events are given before they are committed: so far back one may appear late. */
    private static final int LATE_EVENTS = 1_000;

    private static final Duration SLACK = Duration.ofMinutes(5);

    private final Sources sources;
    private final Clock clock;
    private final Map<Long, DeviceFold> folds = new HashMap<>();
    private final Map<Long, Memory> unsaved = new HashMap<>();
    private final Map<Long, Double> modelFastest = new HashMap<>();
    private Map<Long, DeviceTable.Watched> devices = Map.of();
    private Map<Long, Memory> memories = Map.of();
    private Tuning.Book tunings = new Tuning.Book(RuleSet.shipped());
    private RuleSet rules = RuleSet.shipped();
    private ServiceFold service = new ServiceFold(tunings.of(RuleTarget.service()));
    private long lastEvent;
    private Unseen unseen = Unseen.NONE;

    /** Where everything comes from. */
    record Sources(Supplier<RuleSet> rules, Alarms alarms, PastReadings readings, PastEvents events, Tables tables) {}

    /** Alarms as they are, and as they were. */
    record Alarms(AlarmBook now, PastAlarms past) {}

    /** Our own tables. */
    record Tables(DeviceTable devices, MemoryTable memories) {}

    LiveFolds(Sources sources, Clock clock) {
        this.sources = sources;
        this.clock = clock;
    }

    /** Begins, or begins anew: open alarms go on, and what is stored of the recent past is gone through again. */
    void begin(List<Signal> out) {
        folds.clear();
        memories = sources.tables.memories.all();
        refresh(out);
        Instant now = clock.instant();
        Instant from = now.minus(rules.memory()).minus(SLACK);
        unseen = SightTimes.since(sources.alarms.past, from);
        sources.alarms.now.active().values().forEach(alarm -> tell(alarm, Optional.of(alarm.severity()), now, out));
        sources.alarms
                .now
                .recentlyCleared(CustomerScope.everyone(), from)
                .forEach(alarm -> tell(alarm, Optional.empty(), now, out));
        lastEvent = Math.max(0, sources.events.last() - LATE_EVENTS);
        replay(from, out);
        sources.events
                .between(from, now.plus(SLACK), Happenings.KINDS, devices.keySet())
                .forEach(event -> happened(event, event.event().at(), out));
        folds.values().forEach(DeviceFold::settle);
    }

    private void tell(OpenAlarm alarm, Optional<Severity> severity, Instant now, List<Signal> out) {
        AlarmType type = alarm.key().type();
        if (ShippedRules.of(type).kind() == Rule.Kind.ELSEWHERE) {
            return;
        }
        Instant changed = alarm.clearedAt().orElse(alarm.changed());
        if (alarm.key().resource().kind() == Resource.Kind.SERVICE) {
            service.tell(alarm.key(), changed, severity, alarm.began());
            return;
        }
        DeviceFold fold = fold(alarm.key().resource().id());
        if (fold != null) {
            fold.tell(alarm.key(), changed, severity, alarm.began());
        } else if (severity.isPresent()) {
            out.add(new Signal.Clear(alarm.key(), now, "The device was removed."));
        }
    }

    /** Goes through what was stored since then; what is known already changes nothing. */
    void replay(Instant from, List<Signal> out) {
        Instant to = clock.instant().plus(Duration.ofDays(1));
        sources.readings.raw(devices.keySet(), from, to, reading -> take(reading, out));
    }

    /** Takes over what people changed: devices, where they are, values of rules. */
    void refresh(List<Signal> out) {
        Instant now = clock.instant();
        devices = sources.tables.devices.all();
        RuleSet fresh = sources.rules.get();
        if (fresh != rules) {
            rules = fresh;
            tunings = new Tuning.Book(rules);
        }
        service.retune(tunings.of(RuleTarget.service()), now, out);
        models();
        folds.entrySet().removeIf(entry -> {
            DeviceTable.Watched watched = devices.get(entry.getKey());
            if (watched == null) {
                entry.getValue().end(now, "The device was removed.", out);
                return true;
            }
            entry.getValue().retune(tunings.of(watched.target()), now, out);
            entry.getValue().modelFastest(fastestOf(watched));
            return false;
        });
    }

    private void models() {
        modelFastest.clear();
        devices.forEach((id, watched) -> {
            DeviceFold fold = folds.get(id);
            Memory memory = fold == null ? memories.get(id) : fold.memory();
            if (watched.target().modelId() != 0 && memory != null && memory.fastest() > 0) {
                modelFastest.merge(watched.target().modelId(), memory.fastest(), Math::max);
            }
        });
    }

    private double fastestOf(DeviceTable.Watched watched) {
        return modelFastest.getOrDefault(watched.target().modelId(), Double.NaN);
    }

    /** The fold of a device, null where the device is not known. */
    private DeviceFold fold(long deviceId) {
        DeviceFold known = folds.get(deviceId);
        DeviceTable.Watched watched = devices.get(deviceId);
        if (known != null || watched == null) {
            return known;
        }
        Memory memory = memories.get(deviceId);
        DeviceFold fold =
                new DeviceFold(deviceId, tunings.of(watched.target()), memory == null ? Memory.none() : memory);
        fold.modelFastest(fastestOf(watched));
        fold.unseen(unseen, clock.instant(), List.of());
        folds.put(deviceId, fold);
        return fold;
    }

    /** Takes one reading; of a device that is paused or gone it changes nothing. */
    void take(Reading reading, List<Signal> out) {
        DeviceFold fold = fold(reading.deviceId());
        if (fold == null || devices.get(reading.deviceId()).paused()) {
            return;
        }
        try {
            fold.take(reading, out);
        } catch (RuntimeException e) {
            // a fault of ours: the other devices are judged all the same
            LOG.errorf(e, "The rules failed at a reading of device %d at %s", reading.deviceId(), reading.at());
        }
        if (fold.memory().takeChanged()) {
            unsaved.put(reading.deviceId(), fold.memory());
        }
    }

    /** Takes what happened since it was asked last, and lets time pass for the rules that count. */
    void events(List<Signal> out) {
        List<EventSearch.Numbered> events;
        Instant now = clock.instant();
        do {
            events = sources.events.after(lastEvent, Happenings.KINDS, EVENTS_AT_ONCE);
            for (EventSearch.Numbered event : events) {
                happened(event, now, out);
                lastEvent = event.id();
            }
        } while (events.size() == EVENTS_AT_ONCE);
        unseen = SightTimes.since(sources.alarms.past, now.minus(rules.memory()).minus(SLACK));
        folds.values().forEach(fold -> fold.unseen(unseen, now, out));
        for (DeviceFold fold : folds.values()) {
            for (AlarmType type : Happenings.TYPES) {
                if (fold.counting(type)) {
                    fold.pass(type, now, out);
                }
            }
        }
    }

    private void happened(EventSearch.Numbered event, Instant found, List<Signal> out) {
        DeviceFold fold = fold(event.event().deviceId());
        Happenings.counted(event.event())
                .filter(type -> fold != null)
                .ifPresent(
                        type -> fold.happened(type, event.event().at(), found, Happenings.words(event.event()), out));
    }

    /** Takes the service's own figures. */
    void service(Map<AlarmType, Double> figures, Duration next, List<Signal> out) {
        service.take(figures, clock.instant(), next, out);
    }

    /** Stores what is new to be remembered; tries again next time when the database does not take it. */
    void save() {
        if (!unsaved.isEmpty()) {
            sources.tables.memories.save(new HashMap<>(unsaved));
            unsaved.clear();
        }
    }

    /** How many devices it holds folds of. */
    int devices() {
        return folds.size();
    }
}
