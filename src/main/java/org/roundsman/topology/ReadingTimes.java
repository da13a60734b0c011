package org.roundsman.topology;

import java.time.Duration;
import java.util.Optional;
import org.roundsman.fleet.DeviceKind;

/**
 * When one device's wiring is read. Full readings lie on a grid with a phase of the device's own, so that a fleet's are
 * spread; what happens to the device brings one forward, and a second one for what needs a minute to show, such as LLDP.
 * All times are epoch milliseconds. Guarded by its owner.
 */
final class ReadingTimes {

    enum Kind {
        FULL,
        STATES
    }

    private static final double GOLDEN = 0.6180339887498949;
    private static final long SETTLED = Duration.ofSeconds(10).toMillis();
    private static final long SETTLED_WELL = Duration.ofSeconds(75).toMillis();
    /** However often a device says that something happened. */
    private static final long LEAST_BETWEEN = Duration.ofSeconds(60).toMillis();

    private final Watched device;
    private final TopologyConfig config;
    private long fullDue;
    private long statesDue;
    private long again = Long.MAX_VALUE;
    private long begun = Long.MIN_VALUE / 2;
    private boolean offersLldp;

    ReadingTimes(Watched device, TopologyConfig config, long now) {
        this.device = device;
        this.config = config;
        this.offersLldp = device.offersLldp();
        Optional<Long> read = device.readAt().map(at -> at.toEpochMilli());
        this.fullDue = read.map(this::next).orElse(now);
        this.statesDue = nextOnGrid(now, config.statesEvery());
    }

    Watched device() {
        return device;
    }

    /** What is due, if anything is. */
    Optional<Kind> due(long now) {
        if (Math.min(fullDue, again) <= now) {
            return Optional.of(Kind.FULL);
        }
        boolean states = device.kind() != DeviceKind.ACCESS_POINT && statesDue <= now;
        return states ? Optional.of(Kind.STATES) : Optional.empty();
    }

    long dueAt() {
        return Math.min(Math.min(fullDue, again), statesDue);
    }

    /** A reading begins; the next ones are as if it brought something. */
    void begin(Kind kind, long now) {
        statesDue = nextOnGrid(now, config.statesEvery());
        if (kind == Kind.FULL) {
            begun = now;
            fullDue = next(now);
            again = again <= now ? Long.MAX_VALUE : Math.max(again, now + LEAST_BETWEEN);
        }
    }

    /** A full reading showed whether LLDP is offered. */
    void ended(boolean lldp, long now) {
        offersLldp = lldp;
        fullDue = next(now);
    }

    /** A reading brought nothing through a fault of ours: once more, soon. */
    void broke(long now) {
        fullDue = Math.min(fullDue, now + LEAST_BETWEEN);
    }

    /** Something happened to the device. */
    void happened(long now) {
        fullDue = Math.min(fullDue, Math.max(now + SETTLED, begun + LEAST_BETWEEN));
        again = Math.min(again, Math.max(now + SETTLED_WELL, begun + LEAST_BETWEEN));
        statesDue = Math.min(statesDue, now);
    }

    /** Somebody wants to see it. */
    void wanted(long now) {
        fullDue = Math.min(fullDue, now);
    }

    private long next(long after) {
        boolean seldom = device.kind() == DeviceKind.ACCESS_POINT && !offersLldp;
        return nextOnGrid(after, seldom ? config.withoutLldpEvery() : config.every());
    }

    private long nextOnGrid(long after, Duration every) {
        long step = Math.max(1_000, every.toMillis());
        double turn = device.deviceId() * GOLDEN;
        long phase = (long) ((turn - Math.floor(turn)) * step);
        return Math.floorDiv(after - phase, step) * step + step + phase;
    }
}
