package org.roundsman.triage;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.measure.Condition;
import org.roundsman.measure.Outcome;
import org.roundsman.readings.DeviceState;

/**
 * A device as finding causes sees it.
 *
 * @param interval between its rounds while it answers
 * @param lostSince start of the first unanswered round, while it is lost
 * @param heard start of the last round in which anything came back from it, as far as known
 * @param asked start of the last round
 * @param misses unanswered rounds in a row, counted to three
 * @param outcome how the last round ended, as far as known
 */
public record DeviceLook(
        long deviceId,
        String name,
        DeviceKind kind,
        Standing standing,
        Duration interval,
        Optional<Instant> lostSince,
        Optional<Instant> heard,
        Optional<Instant> asked,
        int misses,
        Optional<Outcome> outcome) {

    /** After so many times the announced interval nobody was looking (the rule of condition spans). */
    private static final double OVERDUE = 2.5;

    /**
     * Looks at a device.
     *
     * @param paused a person paused it
     * @param state what its last rounds said; empty when it was never visited
     */
    public static DeviceLook of(
            long deviceId,
            String name,
            DeviceKind kind,
            boolean paused,
            Duration interval,
            Optional<DeviceState> state,
            Instant now) {
        Standing standing = state.filter(s -> !paused && !overdue(s, now))
                .map(DeviceLook::standing)
                .orElse(Standing.UNWATCHED);
        return new DeviceLook(
                deviceId,
                name,
                kind,
                standing,
                interval,
                state.filter(s -> standing.lost()).map(DeviceLook::lostSince),
                standing == Standing.REFUSES
                        ? state.map(DeviceState::lastRound)
                        : state.flatMap(DeviceState::lastAnswered),
                state.map(DeviceState::lastRound),
                state.map(DeviceState::misses).orElse(0),
                state.map(DeviceState::outcome));
    }

    /** A silent span may reach further back than the rounds that were counted: into a past that was loaded. */
    private static Instant lostSince(DeviceState state) {
        Instant missing = state.missingSince().orElse(state.since());
        boolean silentBefore =
                state.condition() == Condition.SILENT && state.since().isBefore(missing);
        return silentBefore ? state.since() : missing;
    }

    /** The same, lost since an earlier time: an alarm tells of it, and it was not heard since. */
    public DeviceLook lostSince(Instant earlier) {
        boolean counts = lost() && lostSince.get().isAfter(earlier) && !heardAfter(earlier);
        return counts
                ? new DeviceLook(
                        deviceId, name, kind, standing, interval, Optional.of(earlier), heard, asked, misses, outcome)
                : this;
    }

    private static boolean overdue(DeviceState state, Instant now) {
        return now.isAfter(state.lastRound().plusMillis((long) (OVERDUE * 1_000 * state.nextInSeconds())));
    }

    private static Standing standing(DeviceState state) {
        if (state.condition() == Condition.SILENT) {
            return Standing.SILENT;
        }
        if (state.misses() > 0) {
            return Standing.MISSING;
        }
        return switch (state.condition()) {
            case ANSWERING -> Standing.ANSWERS;
            case REFUSING -> Standing.REFUSES;
            default -> Standing.UNWATCHED;
        };
    }

    public boolean silent() {
        return standing == Standing.SILENT;
    }

    public boolean lost() {
        return standing.lost();
    }

    public boolean watched() {
        return standing != Standing.UNWATCHED;
    }

    /** Whether it answered a round that began after that time. */
    public boolean heardAfter(Instant time) {
        return heard.isPresent() && heard.get().isAfter(time);
    }

    /** Whether a round of it began at that time or later. */
    public boolean askedSince(Instant time) {
        return asked.isPresent() && !asked.get().isBefore(time);
    }
}
