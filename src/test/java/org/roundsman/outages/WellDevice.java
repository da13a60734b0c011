package org.roundsman.outages;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.SplittableRandom;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.Signal;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.measure.Metric;
import org.roundsman.measure.NetworkReading;
import org.roundsman.measure.Outcome;
import org.roundsman.measure.RadioReading;
import org.roundsman.measure.Reading;
import org.roundsman.measure.Subject;
import org.roundsman.measure.Values;
import org.roundsman.readings.DeviceState;
import org.roundsman.readings.spans.Round;
import org.roundsman.readings.spans.SpanFold;
import org.roundsman.readings.spans.SpanState;
import org.roundsman.rules.RuleTarget;
import org.roundsman.rules.fold.DeviceFold;
import org.roundsman.rules.fold.Memory;
import org.roundsman.rules.fold.Tuning;
import org.roundsman.snmp.SnmpSettings;

/** One device that is well, and what the service knows of it. */
final class WellDevice {

    private static final int INTERVAL_SECONDS = 60;
    private static final long WEEK_MINUTES = 7 * 24 * 60;
    /** Minutes that a device takes to answer again after a restart. */
    private static final long BOOT_MINUTES = 2;

    private static final int TRIES = 1 + SnmpSettings.defaults().retries();

    private final long id;
    private final DeviceKind kind;
    private final QuietWeeks.Plan plan;
    private final SplittableRandom lot;
    private final DeviceFold fold;
    private final long phaseMillis;
    private final List<Signal> signals = new ArrayList<>();
    private long restartMinute;
    private boolean restartToTell;
    private long restarts;
    private long missed;
    private SpanState span;
    private Instant lastAnswered;
    private Outcome outcome = Outcome.NO_REPLY;

    WellDevice(long id, DeviceKind kind, QuietWeeks.Plan plan, SplittableRandom lot, Tuning.Book book) {
        this.id = id;
        this.kind = kind;
        this.plan = plan;
        this.lot = lot;
        this.fold = new DeviceFold(id, book.of(new RuleTarget(1, id / 100, 1, id)), Memory.none());
        this.phaseMillis = lot.nextLong(INTERVAL_SECONDS * 1000L);
        this.restartMinute = lot.nextLong(WEEK_MINUTES - BOOT_MINUTES);
    }

    long id() {
        return id;
    }

    String name() {
        return kind.word() + " " + id;
    }

    DeviceKind kind() {
        return kind;
    }

    long phaseMillis() {
        return phaseMillis;
    }

    long missed() {
        return missed;
    }

    long restarts() {
        return restarts;
    }

    boolean silent() {
        return span != null && span.condition() == org.roundsman.measure.Condition.SILENT;
    }

    /** Makes a round; the alarms that its reading raised. */
    List<AlarmKey> round(Instant at, long minute) {
        boolean heard = !away(minute) && !lost();
        outcome = heard ? Outcome.ANSWERED : Outcome.NO_REPLY;
        span = SpanFold.step(span, new Round(at.toEpochMilli(), outcome, INTERVAL_SECONDS), turn -> {});
        signals.clear();
        if (heard) {
            lastAnswered = at;
            fold.take(reading(at), signals);
            tellRestart(at);
        } else {
            missed++;
            fold.take(Reading.empty(id, at, outcome, INTERVAL_SECONDS), signals);
        }
        for (AlarmType type : List.of(AlarmType.DEVICE_RESTARTED, AlarmType.FLAPPING)) {
            if (fold.counting(type)) {
                fold.pass(type, at, signals);
            }
        }
        return signals.stream()
                .filter(Signal.Raise.class::isInstance)
                .map(Signal::key)
                .toList();
    }

    /** Whether a restart took up some of the last three rounds. */
    boolean restartsAt(Instant now) {
        long minute = (now.toEpochMilli() - QuietWeeks.BEGIN.toEpochMilli()) / (INTERVAL_SECONDS * 1000L);
        long since = minute % WEEK_MINUTES - restartMinute;
        return since >= 0 && since <= BOOT_MINUTES + 1;
    }

    /** Whether it starts, or is out of reach for a planted reason. */
    private boolean away(long minute) {
        long week = minute / WEEK_MINUTES;
        long inWeek = minute % WEEK_MINUTES;
        if (inWeek == restartMinute && week == restarts) {
            restarts++;
            restartToTell = true;
        }
        boolean boots = inWeek >= restartMinute && inWeek < restartMinute + BOOT_MINUTES;
        return boots
                || plan.planted().stream()
                        .anyMatch(p -> p.deviceId() == id && minute >= p.fromMinute() && minute < p.toMinute());
    }

    /** Whether all tries of a request get lost: the request or its reply. */
    private boolean lost() {
        for (int i = 0; i < TRIES; i++) {
            if (lot.nextDouble() >= plan.loss() && lot.nextDouble() >= plan.loss()) {
                return false;
            }
        }
        return true;
    }

    private void tellRestart(Instant found) {
        if (restartToTell) {
            restartToTell = false;
            fold.happened(AlarmType.DEVICE_RESTARTED, found, found, "", signals);
        }
    }

    /** A visit asks several times: that the device answered stands by the first, later ones bring less when they are lost. */
    private Reading reading(Instant at) {
        boolean whole = !lost();
        Values device = Values.builder(Subject.DEVICE)
                .set(Metric.UPTIME, 3_600)
                .set(Metric.CPU, 5 + lot.nextInt(50))
                .set(Metric.MEMORY, 40 + lot.nextInt(30))
                .set(Metric.PORT_SPEED, 1_000)
                .set(Metric.PORT_ERRORS, 0)
                .set(Metric.CLOCK_OFFSET, lot.nextDouble() * 2 - 1)
                .build();
        List<RadioReading> radios = new ArrayList<>();
        List<NetworkReading> networks = new ArrayList<>();
        if (kind == DeviceKind.ACCESS_POINT) {
            radios.add(radio(1));
            if (whole) {
                radios.add(radio(2));
                networks.add(new NetworkReading("Staff", Values.none(Subject.NETWORK)));
                networks.add(new NetworkReading("Guests", Values.none(Subject.NETWORK)));
            }
        }
        return new Reading(id, at, Outcome.ANSWERED, INTERVAL_SECONDS, device, radios, networks, Optional.empty());
    }

    private RadioReading radio(int number) {
        return new RadioReading(
                number,
                Values.builder(Subject.RADIO)
                        .set(Metric.CHANNEL, number == 1 ? 6 : 36)
                        .set(Metric.NOISE, -95)
                        .set(Metric.UTILISATION, 10 + lot.nextInt(35))
                        .set(Metric.RADIO_CLIENTS, lot.nextInt(40))
                        .set(Metric.RETRIES, 3 + lot.nextInt(15))
                        .build());
    }

    /** What the last rounds say, as it would be stored; empty before the first. */
    Optional<DeviceState> state() {
        return Optional.ofNullable(span)
                .map(s -> new DeviceState(
                        id,
                        s.condition(),
                        Instant.ofEpochMilli(s.since()),
                        s.misses(),
                        s.misses() == 0 ? Optional.empty() : Optional.of(Instant.ofEpochMilli(s.missingSince())),
                        Optional.ofNullable(lastAnswered),
                        Instant.ofEpochMilli(s.last().at()),
                        INTERVAL_SECONDS,
                        outcome,
                        OptionalDouble.empty(),
                        OptionalInt.empty()));
    }
}
