package org.roundsman.rules.fold;

import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.Severity;
import org.roundsman.alarms.Signal;

/** Where the rules stand for one device: takes figures, gives signals. Used by one thread. */
final class Standings {

    private final long deviceId;
    private final Map<Slot, LevelState> states = new HashMap<>(2);
    private final Map<Slot, Told> told = new HashMap<>(0);

    Standings(long deviceId) {
        this.deviceId = deviceId;
    }

    /** What is known for certain of an alarm as of a time: figures up to then lead to no signal. */
    private record Told(long at, Optional<Severity> severity, long began) {}

    /** What a figure is about, and what more to say about it. */
    record Look(Slot slot, Ladder ladder, String also) {}

    /** An alarm that is there, or went away, according to those who keep alarms. */
    void tell(AlarmKey key, long changed, Optional<Severity> severity, long began) {
        Slot.of(key).ifPresent(slot -> told.put(slot, new Told(changed, severity, began)));
    }

    /** What was told holds from now on, also where no figure came since. */
    void settle() {
        told.forEach((slot, known) -> keep(slot, correct(state(slot), known)));
        told.clear();
    }

    boolean isEmpty() {
        return states.isEmpty() && told.isEmpty();
    }

    boolean knows(Slot slot) {
        return states.containsKey(slot) || told.containsKey(slot);
    }

    /** Names under which a rule has something going. */
    List<String> names(Slot like) {
        return Stream.concat(states.keySet().stream(), told.keySet().stream())
                .filter(slot -> slot.type() == like.type() && slot.radio() == like.radio())
                .map(Slot::name)
                .distinct()
                .toList();
    }

    /**
     * Takes one figure.
     *
     * @param began when the fault began, for rules that know it better than the fold; else NONE
     */
    void take(Look look, Levels.Sample sample, long began, List<Signal> out) {
        Slot slot = look.slot();
        LevelState state = state(slot);
        Told known = told.get(slot);
        if (known != null && sample.at() > known.at()) {
            told.remove(slot);
            state = correct(state, known);
            known = null;
        }
        Levels.Step step = Levels.step(state, sample, look.ladder());
        keep(slot, step.state());
        if (known == null) {
            say(look, sample, step.decision(), began, out);
        }
    }

    /** The same, where something happened again: what is up says so, also where its severity stays. */
    void takeAgain(Look look, Levels.Sample sample, long began, List<Signal> out) {
        boolean sure = !told.containsKey(look.slot());
        int before = out.size();
        take(look, sample, began, out);
        Optional<Severity> severity = state(look.slot()).severity();
        if (sure && out.size() == before && severity.isPresent()) {
            Instant at = Instant.ofEpochMilli(sample.at());
            Instant from = Instant.ofEpochMilli(
                    Math.min(sample.at(), state(look.slot()).began()));
            out.add(new Signal.Raise(look.slot().key(deviceId), severity.get(), from, at, look.also()));
        }
    }

    private void say(Look look, Levels.Sample sample, Decision decision, long began, List<Signal> out) {
        Instant at = Instant.ofEpochMilli(sample.at());
        AlarmKey key = look.slot().key(deviceId);
        if (decision instanceof Decision.Raise raise) {
            long from = Math.min(sample.at(), began == LevelState.NONE ? raise.began() : began);
            String text = Texts.raised(key.type(), raise, look.also());
            out.add(new Signal.Raise(key, raise.severity(), Instant.ofEpochMilli(from), at, text));
        } else if (decision instanceof Decision.Clear clear) {
            out.add(new Signal.Clear(key, at, Texts.cleared(key.type(), clear)));
        }
    }

    /** Drops what these slots stand at; what is up clears, for that reason. */
    void drop(Predicate<Slot> which, Instant at, String reason, List<Signal> out) {
        settle();
        states.entrySet().removeIf(entry -> {
            boolean goes = which.test(entry.getKey());
            if (goes && entry.getValue().up() != 0) {
                out.add(new Signal.Clear(entry.getKey().key(deviceId), at, reason));
            }
            return goes;
        });
    }

    private LevelState state(Slot slot) {
        return states.getOrDefault(slot, LevelState.IDLE);
    }

    private void keep(Slot slot, LevelState state) {
        if (state.idle()) {
            states.remove(slot);
        } else {
            states.put(slot, state);
        }
    }

    private static LevelState correct(LevelState state, Told known) {
        return state.corrected(known.severity(), known.began());
    }
}
