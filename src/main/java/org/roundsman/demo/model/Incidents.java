package org.roundsman.demo.model;

import java.util.ArrayList;
import java.util.List;
import org.roundsman.demo.DemoDevice;
import org.roundsman.demo.DemoFleet;
import org.roundsman.demo.Fault;
import org.roundsman.fleet.DeviceKind;

/**
 * Things that happen once in a while and pass: an update that is tried and taken back, a network for one day, radar, a
 * fan. A pure function of the fleet and the time. Thread-safe.
 */
final class Incidents {

    private static final long MINUTE = 60_000;
    private static final long HOUR = 60 * MINUTE;

    /**
     * When one of them happens: in each window to some members, from a minute drawn by lot, for a time drawn by lot.
     *
     * @param from the latest minute of the window at which it begins, exclusive
     * @param least the shortest time, in minutes
     * @param more by how much longer it may last, exclusive
     */
    private record Kind(Fault fault, Rotation rotation, int from, int least, int more) {}

    private static final Stretch NEVER = new Stretch(0, 0);

    private final long seed;
    private final Kind update;
    private final Kind network;
    private final Kind radar;
    private final Kind fan;
    private final int[] accessPoints;
    private final int[] switches;

    Incidents(DemoFleet fleet) {
        this.seed = fleet.seed();
        this.accessPoints = ordinals(fleet, DeviceKind.ACCESS_POINT);
        this.switches = ordinals(fleet, DeviceKind.NETWORK_SWITCH);
        int aps = fleet.accessPoints();
        int some = Math.max(1, aps / 250);
        int sites = fleet.sites().size();
        int count = count(fleet, DeviceKind.NETWORK_SWITCH);
        this.update = new Kind(Fault.FIRMWARE_UPDATED, rotation(Fault.FIRMWARE_UPDATED, aps, some, 12), 240, 180, 180);
        this.network = new Kind(
                Fault.NETWORK_ADDED, rotation(Fault.NETWORK_ADDED, sites, Math.max(1, sites / 40), 24), 600, 240, 360);
        this.radar =
                new Kind(Fault.RADAR_SEEN, rotation(Fault.RADAR_SEEN, aps, Math.min(aps, 4 * some), 6), 240, 30, 60);
        this.fan = new Kind(
                Fault.FAN_FAILED, rotation(Fault.FAN_FAILED, count, Math.max(1, count / 40), 10), 240, 60, 180);
    }

    private Rotation rotation(Fault fault, int members, int each, int hours) {
        return new Rotation(Lot.key(seed, 520 + fault.ordinal()), members, each, hours * HOUR);
    }

    private static int[] ordinals(DemoFleet fleet, DeviceKind kind) {
        int[] ordinals = new int[fleet.devices().size()];
        int next = 0;
        for (DemoDevice device : fleet.devices()) {
            ordinals[device.number()] = device.kind() == kind ? next++ : -1;
        }
        return ordinals;
    }

    private static int count(DemoFleet fleet, DeviceKind kind) {
        return (int) fleet.devices().stream().filter(d -> d.kind() == kind).count();
    }

    int bits(DemoDevice device, long at) {
        int accessPoint = accessPoints[device.number()];
        int bits = bit(fan, switches[device.number()], at);
        if (accessPoint >= 0) {
            bits |= bit(update, accessPoint, at) | bit(network, device.site(), at) | bit(radar, accessPoint, at);
        }
        return bits;
    }

    private int bit(Kind kind, int member, long at) {
        return when(kind, member, kind.rotation.window(at)).holds(at) ? kind.fault.bit() : 0;
    }

    /** It ends within its window. */
    private Stretch when(Kind kind, int member, long window) {
        if (member < 0 || !kind.rotation.meets(window, member)) {
            return NEVER;
        }
        long key = Lot.key(seed, 540 + kind.fault.ordinal(), window * 31 + member);
        long from = window * kind.rotation.windowMillis() + Lot.below(key, kind.from) * MINUTE;
        return new Stretch(from, from + (kind.least + Lot.below(key + 1, kind.more)) * MINUTE);
    }

    /** The last restart for an update up to then, or the other one where that is later. */
    long lastRestart(DemoDevice device, long at, long other) {
        int member = accessPoints[device.number()];
        for (long window = update.rotation.window(at);
                member >= 0 && (window + 1) * update.rotation.windowMillis() > other;
                window--) {
            Stretch tried = when(update, member, window);
            if (tried.to() > 0 && tried.from() <= at) {
                return Math.max(other, tried.to() <= at ? tried.to() : tried.from());
            }
        }
        return other;
    }

    /** Restarts for updates in that stretch, and shortly before it. */
    List<Long> restarts(DemoDevice device, long from, long to) {
        List<Long> restarts = new ArrayList<>();
        int member = accessPoints[device.number()];
        long length = update.rotation.windowMillis();
        for (long w = update.rotation.window(from) - 1; member >= 0 && w * length < to; w++) {
            Stretch tried = when(update, member, w);
            if (tried.to() > 0) {
                restarts.add(tried.from());
                restarts.add(tried.to());
            }
        }
        return restarts;
    }
}
