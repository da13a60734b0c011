package org.roundsman.rules.past;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.BooleanSupplier;
import java.util.function.IntConsumer;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.Signal;
import org.roundsman.measure.Condition;
import org.roundsman.measure.Reading;
import org.roundsman.measure.Subject;
import org.roundsman.readings.DeviceHistory;
import org.roundsman.readings.PastReadings;
import org.roundsman.readings.Span;
import org.roundsman.rules.DryRun;
import org.roundsman.rules.RuleSet;
import org.roundsman.rules.fold.DeviceFold;
import org.roundsman.rules.fold.Memory;
import org.roundsman.rules.fold.Tuning;
import org.roundsman.rules.fold.Unseen;
import org.roundsman.rules.live.Happenings;
import org.roundsman.rules.store.DeviceTable.Watched;
import org.roundsman.timeline.EventSearch;
import org.roundsman.timeline.PastEvents;

/**
 * Runs the folds of one rule over what is stored, once with the values of now and once with those that are tried. Used by
 * one thread.
 */
final class TryWork {

    private final Past past;
    private final Question question;
    private final Episodes current;
    private final Episodes tried;
    private final Tuning.Book now;
    private final Tuning.Book then;
    private final Basis basis;

    /** What is stored. */
    record Past(
            PastReadings readings,
            PastEvents events,
            DeviceHistory history,
            Map<Long, Memory> memories,
            Unseen unseen) {}

    /** What is to be found out. */
    record Question(AlarmType type, RuleSet current, RuleSet tried, Instant from, Instant to) {

        /** A rule must have seen a little of what was before, to know where it stood. */
        Instant warmUp() {
            Duration most = List.of(current.memory(), tried.memory()).stream()
                    .max(Duration::compareTo)
                    .orElseThrow();
            return from.minus(most);
        }
    }

    TryWork(Past past, Question question) {
        this.past = past;
        this.question = question;
        this.current = new Episodes(question.from);
        this.tried = new Episodes(question.from);
        this.now = new Tuning.Book(question.current, Set.of(question.type));
        this.then = new Tuning.Book(question.tried, Set.of(question.type));
        this.basis = new Basis(question.type, question.warmUp());
    }

    /** Goes through these devices; told how many more are done, asked whether to stop. */
    DryRun.Result run(Map<Long, Watched> devices, IntConsumer done, BooleanSupplier stop) {
        Map<Long, Double> fastest = fastest(devices.values());
        if (Happenings.TYPES.contains(question.type)) {
            events(devices, done, stop);
        } else {
            readings(devices, fastest, done, stop);
        }
        return new DryRun.Result(current.tally(), tried.tally(), basis.words());
    }

    private Map<Long, Double> fastest(Collection<Watched> devices) {
        Map<Long, Double> fastest = new HashMap<>();
        for (Watched watched : devices) {
            Memory memory = past.memories.get(watched.target().deviceId());
            if (memory != null && memory.fastest() > 0 && watched.target().modelId() != 0) {
                fastest.merge(watched.target().modelId(), memory.fastest(), Math::max);
            }
        }
        return fastest;
    }

    private Set<Subject> parts() {
        return switch (question.type) {
            case RADIO_OFF, UTILISATION_HIGH, CLIENTS_HIGH, RETRIES_HIGH -> EnumSet.of(Subject.RADIO);
            case SETUP_NETWORK_OPEN -> EnumSet.of(Subject.NETWORK);
            default -> EnumSet.noneOf(Subject.class);
        };
    }

    private void readings(
            Map<Long, Watched> devices, Map<Long, Double> fastest, IntConsumer done, BooleanSupplier stop) {
        past.readings.all(
                devices.keySet(), question.warmUp(), question.to, parts(), stop, new Taking(devices, fastest, done));
    }

    private void events(Map<Long, Watched> devices, IntConsumer done, BooleanSupplier stop) {
        basis.events();
        List<Long> all = new ArrayList<>(devices.keySet());
        int size = 500;
        for (int i = 0; i < all.size() && !stop.getAsBoolean(); i += size) {
            List<Long> portion = all.subList(i, Math.min(all.size(), i + size));
            Map<Long, List<EventSearch.Numbered>> byDevice = new HashMap<>();
            past.events.between(question.warmUp(), question.to, Happenings.KINDS, portion).stream()
                    .filter(event -> Happenings.counted(event.event())
                            .filter(question.type::equals)
                            .isPresent())
                    .forEach(event -> byDevice.computeIfAbsent(event.event().deviceId(), id -> new ArrayList<>())
                            .add(event));
            byDevice.forEach((device, events) -> {
                Pair pair = new Pair(devices.get(device), Double.NaN);
                pair.happened(events);
                pair.close();
            });
            done.accept(portion.size());
        }
    }

    /** One device, folded twice side by side. */
    private final class Pair {
        private final Watched device;
        private final DeviceFold before;
        private final DeviceFold after;
        private final List<Signal> signals = new ArrayList<>();

        Pair(Watched device, double modelFastest) {
            this.device = device;
            long id = device.target().deviceId();
            Memory memory = past.memories.getOrDefault(id, Memory.none());
            before = new DeviceFold(id, now.of(device.target()), memory.copy());
            after = new DeviceFold(id, then.of(device.target()), memory.copy());
            before.modelFastest(modelFastest);
            after.modelFastest(modelFastest);
            both((fold, out) -> fold.unseen(past.unseen, question.from, out));
            coarse(true);
        }

        void coarse(boolean quarters) {
            before.coarse(quarters);
            after.coarse(quarters);
        }

        private interface Move {
            void on(DeviceFold fold, List<Signal> out);
        }

        private void both(Move move) {
            one(before, current, move);
            one(after, tried, move);
        }

        private void one(DeviceFold fold, Episodes episodes, Move move) {
            move.on(fold, signals);
            if (!signals.isEmpty()) {
                episodes.take(signals, device);
                signals.clear();
            }
        }

        void take(Reading reading) {
            both((fold, out) -> fold.take(reading, out));
        }

        /** From before the first raw reading it is known from the spans when the device fell silent. */
        void falls(Instant until) {
            List<Instant> falls = past.history.spans(device.target().deviceId(), question.warmUp(), until).stream()
                    .filter(span -> span.condition() == Condition.SILENT)
                    .map(Span::from)
                    .filter(at -> at.isBefore(until) && !at.isBefore(question.warmUp()))
                    .toList();
            timed(falls, until, (fold, at, out) -> fold.fell(at, out));
        }

        void happened(List<EventSearch.Numbered> events) {
            Map<Instant, String> words = new HashMap<>();
            events.forEach(event -> words.put(event.event().at(), Happenings.words(event.event())));
            List<Instant> times = words.keySet().stream().sorted().toList();
            timed(times, question.to, (fold, at, out) -> fold.happened(question.type, at, at, words.get(at), out));
        }

        private interface Timed {
            void on(DeviceFold fold, Instant at, List<Signal> out);
        }

        private void timed(List<Instant> times, Instant until, Timed what) {
            one(before, current, (fold, out) -> inTime(fold, now.of(device.target()), times, until, what, out));
            one(after, tried, (fold, out) -> inTime(fold, then.of(device.target()), times, until, what, out));
        }

        /** Between what happened, time passes: each of it stops counting when its window is over. */
        private void inTime(
                DeviceFold fold, Tuning tuning, List<Instant> times, Instant until, Timed what, List<Signal> out) {
            Duration window = tuning.values(question.type).window();
            int passed = 0;
            for (int i = 0; i <= times.size(); i++) {
                Instant next = i < times.size() ? times.get(i) : until;
                while (passed < i && !times.get(passed).plus(window).isAfter(next)) {
                    fold.pass(question.type, times.get(passed++).plus(window), out);
                }
                if (i < times.size()) {
                    what.on(fold, next, out);
                }
            }
        }

        void close() {
            current.close(device);
            tried.close(device);
        }
    }

    /** Takes the readings of one device after another. */
    private final class Taking implements PastReadings.Taker {

        private final Map<Long, Watched> devices;
        private final Map<Long, Double> fastest;
        private final IntConsumer done;
        private Pair pair;

        Taking(Map<Long, Watched> devices, Map<Long, Double> fastest, IntConsumer done) {
            this.devices = devices;
            this.fastest = fastest;
            this.done = done;
        }

        @Override
        public void accept(Reading reading) {
            open(reading.deviceId());
            pair.take(reading);
        }

        @Override
        public void raw(long deviceId, Instant from) {
            open(deviceId);
            basis.raw(from);
            pair.coarse(false);
            if (question.type == AlarmType.FLAPPING) {
                pair.falls(from);
            }
        }

        private void open(long deviceId) {
            if (pair == null || pair.device.target().deviceId() != deviceId) {
                close();
                Watched device = devices.get(deviceId);
                pair = new Pair(device, fastest.getOrDefault(device.target().modelId(), Double.NaN));
            }
        }

        @Override
        public void done(int count) {
            close();
            done.accept(count);
        }

        private void close() {
            if (pair != null) {
                pair.close();
                pair = null;
            }
        }
    }
}
