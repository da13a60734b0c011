package org.roundsman.demo.model;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.roundsman.demo.DemoDevice;
import org.roundsman.demo.DemoFleet;
import org.roundsman.demo.Fault;

/**
 * When devices restart and when faults come and go by themselves: a pure function of the fleet and the time. At any time
 * some port is dead and some room is saturated; every six hours some site loses its line for a while. Thread-safe.
 */
public final class Schedule {

    private static final long MINUTE = 60_000;
    private static final long HOUR = 60 * MINUTE;

    private final DemoFleet fleet;
    private final Rotation deadPorts;
    private final Rotation lostUplinks;
    private final Rotation saturatedRooms;
    private final Incidents incidents;
    private final boolean scheduled;
    private final Restarts restarts;
    private final int[] ordinals;
    private final List<LocalHours> crowdHours;

    /** With {@code scheduled} false, only restarts come by themselves, and faults that stand all the time. */
    public Schedule(DemoFleet fleet, boolean scheduled) {
        this.fleet = fleet;
        this.scheduled = scheduled;
        this.incidents = new Incidents(fleet);
        int aps = fleet.accessPoints();
        int some = Math.max(1, aps / 250);
        int sites = fleet.sites().size();
        this.deadPorts = new Rotation(Lot.key(fleet.seed(), 500), aps, some, 8 * HOUR);
        this.lostUplinks = new Rotation(Lot.key(fleet.seed(), 501), sites, Math.max(1, sites / 40), 6 * HOUR);
        this.saturatedRooms = new Rotation(Lot.key(fleet.seed(), 502), aps, some, 3 * HOUR);
        this.restarts = new Restarts(fleet);
        this.ordinals = ordinals(fleet);
        this.crowdHours = fleet.sites().stream().map(LocalHours::of).toList();
    }

    private static int[] ordinals(DemoFleet fleet) {
        int[] ordinals = new int[fleet.devices().size()];
        int next = 0;
        for (DemoDevice device : fleet.devices()) {
            ordinals[device.number()] = device.isAccessPoint() ? next++ : -1;
        }
        return ordinals;
    }

    /** The faults in force, as bits. */
    public int bits(DemoDevice device, long at) {
        int bits = standing(device, at);
        if (!scheduled) {
            return bits;
        }
        bits |= incidents.bits(device, at);
        int ordinal = ordinals[device.number()];
        if (ordinal >= 0 && deadPorts.meets(deadPorts.window(at), ordinal)) {
            bits |= Fault.PORT_DEAD.bit();
        }
        if (ordinal >= 0 && saturatedRooms.meets(saturatedRooms.window(at), ordinal)) {
            bits |= Fault.ROOM_SATURATED.bit();
        }
        if (lost(device.site(), lostUplinks.window(at)).holds(at)) {
            bits |= Fault.UPLINK_LOST.bit();
        }
        return bits;
    }

    private int standing(DemoDevice device, long at) {
        int bits = 0;
        if (device.standing().isEmpty()) {
            return bits;
        }
        for (Fault fault : device.standing()) {
            bits |= fault.bit();
        }
        boolean quiet =
                Fault.ROOM_SATURATED.in(bits) && !crowdHours.get(device.site()).hold(at);
        return quiet ? bits & ~Fault.ROOM_SATURATED.bit() : bits;
    }

    /** When the line of a site is down in that window; an empty stretch where it is not. */
    private Stretch lost(int site, long window) {
        if (!lostUplinks.meets(window, site)) {
            return new Stretch(0, 0);
        }
        long key = Lot.key(fleet.seed(), 503, window * 31 + site);
        long from = window * lostUplinks.windowMillis() + Lot.below(key, 240) * MINUTE;
        return new Stretch(from, from + (25 + Lot.below(key + 1, 60)) * MINUTE);
    }

    /** The last restart at or before that time: its own, or the end of the last time without power. */
    public long lastRestart(DemoDevice device, long at) {
        long own = restarts.last(device, at);
        int ordinal = ordinals[device.number()];
        if (ordinal < 0 || !scheduled) {
            return own;
        }
        own = incidents.lastRestart(device, at, own);
        for (long window = deadPorts.window(at) - 1; (window + 1) * deadPorts.windowMillis() > own; window--) {
            if (deadPorts.meets(window, ordinal)) {
                return (window + 1) * deadPorts.windowMillis();
            }
        }
        return own;
    }

    /** Since when the port of the device has been dead by the schedule, or the end of time where it is not. */
    public long deadSince(DemoDevice device, long at) {
        int ordinal = ordinals[device.number()];
        long window = deadPorts.window(at);
        boolean dead = scheduled && ordinal >= 0 && deadPorts.meets(window, ordinal);
        return dead ? window * deadPorts.windowMillis() : Long.MAX_VALUE;
    }

    /** How many milliseconds of that stretch the port of the device was dead by the schedule. */
    public long deadMillis(DemoDevice device, long from, long to) {
        int ordinal = ordinals[device.number()];
        long sum = 0;
        for (long w = deadPorts.window(from); scheduled && ordinal >= 0 && w * deadPorts.windowMillis() < to; w++) {
            if (deadPorts.meets(w, ordinal)) {
                long begin = Math.max(from, w * deadPorts.windowMillis());
                sum += Math.min(to, (w + 1) * deadPorts.windowMillis()) - begin;
            }
        }
        return sum;
    }

    /** How long the device takes to answer again after that restart. */
    public long bootMillis(DemoDevice device, long restart) {
        return restarts.bootMillis(device, restart);
    }

    /** Every time in that stretch in which the device's agent was silent: in order, apart, cut to the stretch. */
    public List<Stretch> silences(DemoDevice device, long from, long to) {
        List<Stretch> found = new ArrayList<>(restarts.boots(device, from, to));
        if (!scheduled) {
            return joined(found, from, to);
        }
        for (long restart : incidents.restarts(device, from, to)) {
            found.add(new Stretch(restart, restart + bootMillis(device, restart)));
        }
        int ordinal = ordinals[device.number()];
        long length = deadPorts.windowMillis();
        for (long w = deadPorts.window(from) - 1; ordinal >= 0 && w * length < to; w++) {
            if (deadPorts.meets(w, ordinal)) {
                long end = (w + 1) * length;
                found.add(new Stretch(w * length, end + bootMillis(device, end)));
            }
        }
        for (long w = lostUplinks.window(from) - 1; w * lostUplinks.windowMillis() < to; w++) {
            found.add(lost(device.site(), w));
        }
        return joined(found, from, to);
    }

    private static List<Stretch> joined(List<Stretch> found, long from, long to) {
        List<Stretch> joined = new ArrayList<>();
        found.sort(Comparator.comparingLong(Stretch::from));
        for (Stretch stretch : found) {
            Stretch cut = new Stretch(Math.max(from, stretch.from()), Math.min(to, stretch.to()));
            if (cut.from() >= cut.to()) {
                continue;
            }
            Stretch before = joined.isEmpty() ? null : joined.get(joined.size() - 1);
            if (before != null && before.to() >= cut.from()) {
                joined.set(joined.size() - 1, new Stretch(before.from(), Math.max(before.to(), cut.to())));
            } else {
                joined.add(cut);
            }
        }
        return joined;
    }
}
