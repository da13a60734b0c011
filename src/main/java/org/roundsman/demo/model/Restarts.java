package org.roundsman.demo.model;

import java.util.ArrayList;
import java.util.List;
import org.roundsman.demo.DemoDevice;
import org.roundsman.demo.DemoFleet;
import org.roundsman.demo.Fault;
import org.roundsman.fleet.DeviceKind;

/** Restarts that a device makes by itself: one in each slot of time, at a minute drawn by lot. Thread-safe. */
final class Restarts {

    private static final long MINUTE = 60_000;
    private static final long DAY = 24 * 60 * MINUTE;
    private static final long FLAPPING_SLOT = 50 * MINUTE;
    private static final long USUAL_BOOT = 2 * MINUTE;

    private final long seed;

    Restarts(DemoFleet fleet) {
        this.seed = fleet.seed();
    }

    long last(DemoDevice device, long at) {
        long slot = slotOf(device, at);
        long restart = restart(device, slot);
        return restart <= at ? restart : restart(device, slot - 1);
    }

    /** Some access points restart every week, the others every two to four; the rest stays up for a month and more. */
    private long slotMillis(DemoDevice device) {
        if (device.standing().contains(Fault.FLAPPING)) {
            return FLAPPING_SLOT;
        }
        int lot = Lot.below(Lot.key(seed, 600, device.number()), 4);
        return device.kind() == DeviceKind.ACCESS_POINT ? (7 + 7L * lot) * DAY : (35 + 7L * lot) * DAY;
    }

    private long slotOf(DemoDevice device, long at) {
        return Math.floorDiv(at - phase(device), slotMillis(device));
    }

    private long phase(DemoDevice device) {
        return minutes(Lot.unit(Lot.key(seed, 601, device.number())) * slotMillis(device));
    }

    private long restart(DemoDevice device, long slot) {
        long length = slotMillis(device);
        double jitter = 0.5 * Lot.unit(Lot.key(seed, 602 + slot, device.number()));
        return slot * length + phase(device) + minutes(jitter * length);
    }

    /** Whole minutes only, so that no restart leaves its slot by rounding. */
    private static long minutes(double millis) {
        return (long) (millis / MINUTE) * MINUTE;
    }

    long bootMillis(DemoDevice device, long restart) {
        if (!device.standing().contains(Fault.FLAPPING)) {
            return USUAL_BOOT;
        }
        return (4 + Lot.below(Lot.key(seed, 603, restart / MINUTE), 6)) * MINUTE;
    }

    List<Stretch> boots(DemoDevice device, long from, long to) {
        List<Stretch> boots = new ArrayList<>();
        for (long slot = slotOf(device, from) - 1; slot <= slotOf(device, to); slot++) {
            long restart = restart(device, slot);
            boots.add(new Stretch(restart, restart + bootMillis(device, restart)));
        }
        return boots;
    }
}
