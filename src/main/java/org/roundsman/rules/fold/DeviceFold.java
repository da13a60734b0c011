package org.roundsman.rules.fold;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.Severity;
import org.roundsman.alarms.Signal;
import org.roundsman.measure.Fact;
import org.roundsman.measure.Metric;
import org.roundsman.measure.NetworkReading;
import org.roundsman.measure.Outcome;
import org.roundsman.measure.RadioReading;
import org.roundsman.measure.Reading;
import org.roundsman.measure.Values;

/**
 * All rules of one device: takes its readings and what happened to it in time order, and gives signals. The same folds run
 * over what is stored just now and over the past. Used by one thread.
 */
public final class DeviceFold {

    /** Unanswered rounds in a row that make a device silent, as everywhere. */
    private static final int MISSES = 3;

    private static final double GIGABIT = 1_000;

    private final Standings standings;
    private final Memory memory;
    private final Map<AlarmType, Counted> counts = new EnumMap<>(AlarmType.class);
    private Tuning tuning;
    private double modelFastest = Double.NaN;
    private long last = Long.MIN_VALUE;
    private int misses;
    private boolean coarse;
    private Unseen unseen = Unseen.NONE;

    public DeviceFold(long deviceId, Tuning tuning, Memory memory) {
        this.standings = new Standings(deviceId);
        this.tuning = tuning;
        this.memory = memory;
    }

    public Memory memory() {
        return memory;
    }

    /** The fastest uplink port, in Mb/s, of any device of the same model; not a number where none is known. */
    public void modelFastest(double megabits) {
        modelFastest = megabits;
    }

    /** Whether readings are made from quarter hours from now on, which hold no channels. */
    public void coarse(boolean quarters) {
        coarse = quarters;
    }

    /**
     * When we saw none of the devices, as far as it is known by now. A silence that began to count then counts no more, and
     * where those that are left are too few, the alarm clears: it was not the device that came and went.
     */
    public void unseen(Unseen fresh, Instant now, List<Signal> out) {
        if (fresh.equals(unseen)) {
            return;
        }
        unseen = fresh;
        Counted counted = counts.get(AlarmType.FLAPPING);
        Ladder ladder = tuning.ladder(AlarmType.FLAPPING);
        if (counted == null || ladder == null || !counted.takeBack(unseen::covers)) {
            return;
        }
        Duration window = tuning.values(AlarmType.FLAPPING).window();
        int left = counted.within(now.toEpochMilli(), window.toMillis());
        if (!ladder.overAny(left)) {
            Slot slot = Slot.device(AlarmType.FLAPPING);
            standings.drop(slot::equals, now, Texts.unseen(left, window), out);
        }
        pass(AlarmType.FLAPPING, now, out);
    }

    /** What those who keep alarms know of one: its severity, or that it cleared. To be told before the first reading. */
    public void tell(AlarmKey key, Instant changed, Optional<Severity> severity, Instant began) {
        standings.tell(key, changed.toEpochMilli(), severity, began.toEpochMilli());
    }

    /** The past is through: what was told holds, also where no reading came since. */
    public void settle() {
        standings.settle();
    }

    /** Other values from now on. Alarms of rules that are switched off clear. */
    public void retune(Tuning fresh, Instant now, List<Signal> out) {
        if (fresh != tuning) {
            tuning = fresh;
            standings.drop(slot -> fresh.ladder(slot.type()) == null, now, "The rule is switched off.", out);
        }
    }

    /** The device is gone: what is up clears. */
    public void end(Instant now, String reason, List<Signal> out) {
        standings.drop(slot -> true, now, reason, out);
    }

    /** Takes a reading further. One that is not later than the last changes nothing. */
    public void take(Reading reading, List<Signal> out) {
        long at = reading.at().toEpochMilli();
        if (at < last) {
            return;
        }
        boolean again = at == last;
        last = at;
        Round round = new Round(at, reading.nextInSeconds() * 1_000L, out);
        if (!again) {
            flapping(round, reading.outcome());
        }
        if (reading.outcome().kind() != Outcome.Kind.ANSWERED) {
            return;
        }
        reading.facts().ifPresent(facts -> memory.unit(facts.values().getOrDefault(Fact.SERIAL, "")));
        device(round, reading.device());
        radios(round, reading.radios());
        networks(round, names(reading));
    }

    /**
     * Takes something that happened further, such as a restart.
     *
     * @param at when it happened
     * @param found when it was found out
     * @param what it was, for the alarm's text
     */
    public void happened(AlarmType type, Instant at, Instant found, String what, List<Signal> out) {
        boolean again = counts.computeIfAbsent(type, t -> new Counted()).add(at.toEpochMilli());
        count(type, new Round(Math.max(at.toEpochMilli(), found.toEpochMilli()), 0, out), what, again);
    }

    /** Lets time pass for the rules that count what happens: they clear without any reading. */
    public void pass(AlarmType type, Instant now, List<Signal> out) {
        count(type, new Round(now.toEpochMilli(), 0, out), "", false);
    }

    /** Whether time passing may change something. */
    public boolean counting(AlarmType type) {
        return counts.containsKey(type) || standings.knows(Slot.device(type));
    }

    /** Takes further that the device fell silent, where that is known without its readings. */
    public void fell(Instant at, List<Signal> out) {
        if (unseen.covers(at.toEpochMilli())) {
            return;
        }
        counts.computeIfAbsent(AlarmType.FLAPPING, t -> new Counted()).add(at.toEpochMilli());
        pass(AlarmType.FLAPPING, at, out);
    }

    /** One reading's time, and where signals go. */
    private record Round(long at, long nextInMillis, List<Signal> out) {}

    private void figure(Round round, Slot slot, double figure, String also) {
        Ladder ladder = tuning.ladder(slot.type());
        if (ladder != null) {
            standings.take(
                    new Standings.Look(slot, ladder, also),
                    new Levels.Sample(round.at, figure, round.nextInMillis),
                    LevelState.NONE,
                    round.out);
        }
    }

    /** The same for the many figures that are fine: nothing is made for them. */
    private void usual(Round round, AlarmType type, int radio, double figure) {
        Ladder ladder = tuning.ladder(type);
        if (ladder == null || standings.isEmpty() && !ladder.overAny(figure)) {
            return;
        }
        figure(round, new Slot(type, radio, ""), figure, "");
    }

    private void flapping(Round round, Outcome outcome) {
        boolean again = false;
        if (outcome.kind() != Outcome.Kind.UNANSWERED) {
            misses = 0;
        } else if (++misses == MISSES && !unseen.covers(round.at)) {
            again = counts.computeIfAbsent(AlarmType.FLAPPING, t -> new Counted())
                    .add(round.at);
        }
        count(AlarmType.FLAPPING, round, "", again);
    }

    private void count(AlarmType type, Round round, String what, boolean again) {
        Ladder ladder = tuning.ladder(type);
        Counted counted = counts.get(type);
        if (ladder == null || counted == null && !standings.knows(Slot.device(type))) {
            return;
        }
        Duration window = tuning.values(type).window();
        int times = counted == null ? 0 : counted.within(round.at, window.toMillis());
        String text = Texts.counted(type, times, window, what);
        Standings.Look look = new Standings.Look(Slot.device(type), ladder, text);
        Levels.Sample sample = new Levels.Sample(round.at, times, 0);
        long began = times == 0 ? LevelState.NONE : counted.first();
        if (again) {
            standings.takeAgain(look, sample, began, round.out);
        } else {
            standings.take(look, sample, began, round.out);
        }
        if (times == 0) {
            counts.remove(type);
        }
    }

    private void device(Round round, Values values) {
        usual(round, AlarmType.CPU_HIGH, 0, values.raw(Metric.CPU));
        usual(round, AlarmType.MEMORY_HIGH, 0, values.raw(Metric.MEMORY));
        usual(round, AlarmType.PORT_ERRORS, 0, values.raw(Metric.PORT_ERRORS));
        usual(round, AlarmType.CLOCK_OFF, 0, Math.abs(values.raw(Metric.CLOCK_OFFSET)));
        port(round, values.raw(Metric.PORT_SPEED));
    }

    private void port(Round round, double speed) {
        memory.speed(speed);
        double rating = memory.fastest();
        if (modelFastest >= GIGABIT && !(rating >= GIGABIT)) {
            rating = GIGABIT;
        }
        boolean judged = rating >= GIGABIT && speed > 0;
        Slot slot = Slot.device(AlarmType.PORT_SLOW);
        if (judged && (speed < rating || standings.knows(slot))) {
            String also = "It runs at " + Texts.figure(speed) + " Mb/s, of " + Texts.figure(rating) + " Mb/s.";
            figure(round, slot, 100 * speed / rating, also);
        }
    }

    private void radios(Round round, List<RadioReading> radios) {
        if (radios.isEmpty()) {
            return;
        }
        Map<Integer, Values> now = new HashMap<>();
        for (RadioReading radio : radios) {
            if (now.putIfAbsent(radio.number(), radio.values()) == null) {
                memory.radio(radio);
                usual(
                        round,
                        AlarmType.UTILISATION_HIGH,
                        radio.number(),
                        radio.values().raw(Metric.UTILISATION));
                usual(
                        round,
                        AlarmType.CLIENTS_HIGH,
                        radio.number(),
                        radio.values().raw(Metric.RADIO_CLIENTS));
                usual(
                        round,
                        AlarmType.RETRIES_HIGH,
                        radio.number(),
                        radio.values().raw(Metric.RETRIES));
            }
        }
        for (int number : memory.radioNumbers()) {
            Slot slot = new Slot(AlarmType.RADIO_OFF, number, "");
            boolean off = memory.off(number, now.get(number), coarse);
            if (off || standings.knows(slot)) {
                String seen = now.containsKey(number) ? "shows no sign of being on the air" : "is missing";
                figure(round, slot, off ? 1 : 0, "Radio " + number + " was on the air and " + seen);
            }
        }
    }

    /** Networks that the round brought; nothing where it brought none, since that is no evidence. */
    private static Set<String> names(Reading reading) {
        Set<String> names = new LinkedHashSet<>();
        for (NetworkReading network : reading.networks()) {
            names.add(network.ssid());
        }
        reading.facts().ifPresent(facts -> names.addAll(facts.networks()));
        return names;
    }

    private void networks(Round round, Set<String> names) {
        if (names.isEmpty() || tuning.ladder(AlarmType.SETUP_NETWORK_OPEN) == null) {
            return;
        }
        List<String> words = tuning.values(AlarmType.SETUP_NETWORK_OPEN).words();
        List<String> found = new ArrayList<>();
        for (String name : names) {
            String lower = name.toLowerCase(Locale.ROOT);
            if (words.stream().anyMatch(lower::startsWith)) {
                found.add(name);
                network(round, name, 1);
            }
        }
        standings.names(Slot.device(AlarmType.SETUP_NETWORK_OPEN)).stream()
                .filter(name -> !found.contains(name))
                .forEach(name -> network(round, name, 0));
    }

    private void network(Round round, String name, int figure) {
        String also = "The network “" + name + "” is on the air";
        figure(round, new Slot(AlarmType.SETUP_NETWORK_OPEN, 0, name), figure, also);
    }
}
