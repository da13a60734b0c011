package org.roundsman.demo;

import java.time.Clock;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import org.roundsman.demo.model.Outlook;
import org.roundsman.demo.model.Schedule;
import org.roundsman.demo.model.Stretch;

/**
 * The faults of an invented fleet: those on the schedule, and those switched on by hand, which last until they are
 * switched off or the program ends. Thread-safe.
 */
public final class Faults {

    private static final long FLAP = 600_000;
    private static final long FLAP_UP = 360_000;
    /** From a restart until the cable carries something again. */
    private static final long LINK_UP = 20_000;

    /** A fault switched on by hand. */
    private record Switched(Fault fault, Stretch stretch) {}

    private final DemoFleet fleet;
    private final Clock clock;
    private final Schedule schedule;
    private final Cabling cabling;
    private final Map<Integer, List<Switched>> switched = new ConcurrentHashMap<>();
    private final AtomicInteger version = new AtomicInteger();

    /** Faults on the schedule and by hand. */
    public Faults(DemoFleet fleet, Clock clock) {
        this(fleet, clock, true);
    }

    private Faults(DemoFleet fleet, Clock clock, boolean scheduled) {
        this.fleet = fleet;
        this.clock = clock;
        this.schedule = new Schedule(fleet, scheduled);
        this.cabling = Cabling.of(fleet);
    }

    /** A fleet in which only hands make faults; restarts come by themselves there too. */
    public static Faults byHandOnly(DemoFleet fleet, Clock clock) {
        return new Faults(fleet, clock, false);
    }

    /** Gives a device a fault from now on; nothing changes when it has it by hand already. */
    public void switchOn(Fault fault, DemoDevice device) {
        switched.compute(device.number(), (number, before) -> {
            List<Switched> after = before == null ? new ArrayList<>() : new ArrayList<>(before);
            if (after.stream().noneMatch(s -> s.fault == fault && s.stretch.to() == Long.MAX_VALUE)) {
                after.add(new Switched(fault, new Stretch(clock.millis(), Long.MAX_VALUE)));
            }
            return List.copyOf(after);
        });
        version.incrementAndGet();
    }

    /** Takes a fault that was switched on by hand off again. Those on the schedule stay. */
    public void switchOff(Fault fault, DemoDevice device) {
        switched.computeIfPresent(device.number(), (number, before) -> before.stream()
                .map(s -> s.fault == fault ? ended(s) : s)
                .toList());
        version.incrementAndGet();
    }

    private Switched ended(Switched one) {
        long to = Math.min(one.stretch.to(), clock.millis());
        return new Switched(one.fault, new Stretch(one.stretch.from(), to));
    }

    /** The faults that are switched on by hand for a device at the moment. */
    public Set<Fault> handSwitched(DemoDevice device) {
        Set<Fault> set = EnumSet.noneOf(Fault.class);
        for (Switched one : byHand(device)) {
            if (one.stretch.to() == Long.MAX_VALUE) {
                set.add(one.fault);
            }
        }
        return set;
    }

    /** Gives every device of a site a fault: with {@link Fault#UPLINK_LOST}, the site goes dark. */
    public void switchOn(Fault fault, DemoSite site) {
        site.devices().forEach(device -> switchOn(fault, device));
    }

    public void switchOff(Fault fault, DemoSite site) {
        site.devices().forEach(device -> switchOff(fault, device));
    }

    /** The faults of a device itself at a time, on the schedule or by hand. */
    public Set<Fault> of(DemoDevice device, long epochMilli) {
        int bits = ownBits(device, epochMilli);
        Set<Fault> set = EnumSet.noneOf(Fault.class);
        for (Fault fault : Fault.values()) {
            if (fault.in(bits)) {
                set.add(fault);
            }
        }
        return set;
    }

    /**
     * All that the device suffers, as bits, for the hot path: what hangs on a device without power loses its power with it
     * or, where it has its own, its line.
     */
    public int bits(DemoDevice device, long epochMilli) {
        int bits = ownBits(device, epochMilli);
        return switched.isEmpty() ? bits : bits | bitsFromAbove(device, epochMilli);
    }

    private int bitsFromAbove(DemoDevice device, long at) {
        Optional<DemoLink> link = cabling.up(device);
        boolean fed = link.isPresent() && link.get().feed() == PowerFeed.PORT;
        DemoDevice below = device;
        while (link.isPresent()) {
            DemoDevice above = cabling.across(link.get(), below);
            if (byHand(above).stream().anyMatch(s -> s.fault == Fault.PORT_DEAD && s.stretch.holds(at))) {
                return fed ? Fault.PORT_DEAD.bit() : Fault.UPLINK_LOST.bit();
            }
            fed = false;
            below = above;
            link = cabling.up(above);
        }
        return 0;
    }

    private int ownBits(DemoDevice device, long epochMilli) {
        int bits = schedule.bits(device, epochMilli);
        for (Switched one : byHand(device)) {
            if (one.stretch.holds(epochMilli)) {
                bits |= one.fault.bit();
            }
        }
        return bits;
    }

    private List<Switched> byHand(DemoDevice device) {
        return switched.isEmpty() ? List.of() : switched.getOrDefault(device.number(), List.of());
    }

    /** Changes whenever a fault is switched by hand. */
    public int version() {
        return version.get();
    }

    /** The first time after that at which a fault of the device was switched by hand, or the end of time. */
    public long nextSwitch(DemoDevice device, long after) {
        long next = Long.MAX_VALUE;
        for (Switched one : byHand(device)) {
            long edge = one.stretch.from() > after ? one.stretch.from() : one.stretch.to();
            if (edge > after) {
                next = Math.min(next, edge);
            }
        }
        return next;
    }

    /** Says what faults and restarts mean for a device at that time. */
    public void look(DemoDevice device, long epochMilli, Outlook out) {
        out.faults = bits(device, epochMilli);
        out.restart = schedule.lastRestart(device, epochMilli);
        boolean flapping = false;
        for (Switched one : byHand(device)) {
            out.restart = Math.max(out.restart, restartBy(one, epochMilli));
            flapping |= one.fault == Fault.FLAPPING && flapDown(one, epochMilli);
        }
        for (Switched one : outages(device)) {
            out.restart = Math.max(out.restart, restartBy(one, epochMilli));
        }
        out.booting = epochMilli < out.restart + schedule.bootMillis(device, out.restart);
        out.silent = flapping || out.booting || Fault.UPLINK_LOST.in(out.faults) || Fault.PORT_DEAD.in(out.faults);
        link(device, epochMilli, flapping, out);
    }

    /** By hand: when the port that feeds the device had no power because its switch had none. */
    private List<Switched> outages(DemoDevice device) {
        Optional<DemoLink> link = switched.isEmpty() ? Optional.empty() : cabling.up(device);
        if (link.isEmpty() || link.get().feed() != PowerFeed.PORT) {
            return List.of();
        }
        return byHand(cabling.across(link.get(), device)).stream()
                .filter(one -> one.fault == Fault.PORT_DEAD)
                .toList();
    }

    private void link(DemoDevice device, long at, boolean flapping, Outlook out) {
        boolean dead = Fault.PORT_DEAD.in(out.faults);
        out.linked = !dead && !flapping && at >= out.restart + LINK_UP;
        out.linkChanged = out.linked ? out.restart + LINK_UP : out.restart;
        if (dead) {
            out.linkChanged = schedule.deadSince(device, at);
        }
        for (Switched one : byHand(device)) {
            if (one.fault == Fault.PORT_DEAD && one.stretch.holds(at)) {
                out.linkChanged = Math.min(out.linkChanged, one.stretch.from());
            } else if (one.fault == Fault.FLAPPING && !dead && flapDown(one, at)) {
                out.linkChanged = one.stretch.from() + (at - one.stretch.from()) / FLAP * FLAP + FLAP_UP;
            }
        }
        for (Switched one : outages(device)) {
            if (one.stretch.holds(at)) {
                out.linkChanged = Math.min(out.linkChanged, one.stretch.from());
            }
        }
    }

    /** How many milliseconds of that stretch the device's cable could carry something: it had power. */
    public long poweredMillis(DemoDevice device, long from, long to) {
        long powered = to - from - schedule.deadMillis(device, from, to);
        for (Switched one : byHand(device)) {
            if (one.fault == Fault.PORT_DEAD) {
                long begin = Math.max(from, one.stretch.from());
                long end = Math.min(to, one.stretch.to());
                powered -= Math.max(0, end - begin - schedule.deadMillis(device, begin, Math.max(begin, end)));
            }
        }
        return powered;
    }

    private static boolean flapDown(Switched flapping, long at) {
        return flapping.stretch.holds(at) && (at - flapping.stretch.from()) % FLAP >= FLAP_UP;
    }

    /** The last restart up to then that a fault by hand has brought about. */
    private static long restartBy(Switched one, long at) {
        if (one.stretch.from() > at) {
            return Long.MIN_VALUE;
        }
        if (one.fault == Fault.PORT_DEAD && one.stretch.to() <= at) {
            return one.stretch.to();
        }
        if (one.fault == Fault.FIRMWARE_UPDATED) {
            return one.stretch.to() <= at ? one.stretch.to() : one.stretch.from();
        }
        if (one.fault == Fault.FLAPPING) {
            long until = Math.min(at, one.stretch.to());
            return one.stretch.from() + (until - one.stretch.from()) / FLAP * FLAP;
        }
        return Long.MIN_VALUE;
    }

    /** Every time in that stretch in which the schedule kept the device silent: in order, and apart. */
    public List<Stretch> silences(DemoDevice device, long from, long to) {
        return schedule.silences(device, from, to);
    }

    public DemoFleet fleet() {
        return fleet;
    }

    /** What hangs on what in the fleet. */
    public Cabling cabling() {
        return cabling;
    }
}
