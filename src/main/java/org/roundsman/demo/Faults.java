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
import org.roundsman.demo.model.Switched;

/**
 * The faults of an invented fleet: those on the schedule, those of the programme of the hour, and those switched on by
 * hand, which last until they are switched off or the program ends. Thread-safe.
 */
public final class Faults {

    /** From a restart until the cable carries something again. */
    private static final long LINK_UP = 20_000;

    private final DemoFleet fleet;
    private final Clock clock;
    private final Schedule schedule;
    private final Cabling cabling;
    private final Map<Integer, List<Switched>> switched = new ConcurrentHashMap<>();
    private final AtomicInteger version = new AtomicInteger();
    private volatile Programme programme = Programme.none();

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

    /**
     * Gives a device a fault from now on; nothing changes when it has it by hand already, or when it cannot have it:
     * {@link Fault#POWER_OFF} where no port feeds it.
     */
    public void switchOn(Fault fault, DemoDevice device) {
        if (fault == Fault.POWER_OFF && !fed(device)) {
            return;
        }
        switched.compute(device.number(), (number, before) -> {
            List<Switched> after = before == null ? new ArrayList<>() : new ArrayList<>(before);
            if (after.stream().noneMatch(s -> s.fault() == fault && s.stretch().to() == Long.MAX_VALUE)) {
                after.add(new Switched(fault, new Stretch(clock.millis(), Long.MAX_VALUE)));
            }
            return List.copyOf(after);
        });
        version.incrementAndGet();
    }

    /** Takes a fault that was switched on by hand off again. Those on the schedule and of the programme stay. */
    public void switchOff(Fault fault, DemoDevice device) {
        switched.computeIfPresent(device.number(), (number, before) -> before.stream()
                .map(s -> s.fault() == fault ? s.endedAt(clock.millis()) : s)
                .toList());
        version.incrementAndGet();
    }

    /** The faults that are switched on by hand for a device at the moment. */
    public Set<Fault> handSwitched(DemoDevice device) {
        Set<Fault> set = EnumSet.noneOf(Fault.class);
        for (Switched one : switched.getOrDefault(device.number(), List.of())) {
            if (one.stretch().to() == Long.MAX_VALUE) {
                set.add(one.fault());
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

    /** Runs that programme from now on in place of the one before, whose running faults end at this moment. */
    public void run(Programme next) {
        Programme before = programme;
        long now = clock.millis();
        for (DemoDevice device : fleet.devices()) {
            List<Switched> had = before.upTo(device, now);
            if (!had.isEmpty()) {
                switched.merge(
                        device.number(), had.stream().map(s -> s.endedAt(now)).toList(), Faults::both);
            }
        }
        programme = next;
        version.incrementAndGet();
    }

    private static List<Switched> both(List<Switched> one, List<Switched> other) {
        List<Switched> both = new ArrayList<>(one);
        both.addAll(other);
        return List.copyOf(both);
    }

    /** The programme that runs; an empty one where none does. */
    public Programme programme() {
        return programme;
    }

    /** The faults of a device itself at a time, on the schedule, of the programme or by hand. */
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
     * or, where it has its own, its line; what hangs on one that hangs itself, or on a broken cable, loses its line. A
     * device without power has {@link Fault#PORT_DEAD}, whatever took it.
     */
    public int bits(DemoDevice device, long epochMilli) {
        int bits = ownBits(device, epochMilli);
        if (Fault.POWER_OFF.in(bits)) {
            bits |= Fault.PORT_DEAD.bit();
        }
        return nothingSwitched() ? bits : bits | bitsFromAbove(device, epochMilli);
    }

    private int bitsFromAbove(DemoDevice device, long at) {
        int bits = 0;
        Optional<DemoLink> link = cabling.up(device);
        boolean fed = fed(device);
        DemoDevice below = device;
        while (link.isPresent()) {
            DemoDevice above = cabling.across(link.get(), below);
            for (Switched one : called(above, at)) {
                if (one.fault() == Fault.PORT_DEAD && one.holds(at)) {
                    return fed ? Fault.PORT_DEAD.bit() : Fault.UPLINK_LOST.bit();
                }
                boolean stops = one.fault() == Fault.HUNG || one.fault() == Fault.LINK_DOWN;
                bits |= stops && one.holds(at) ? Fault.UPLINK_LOST.bit() : 0;
            }
            fed = false;
            below = above;
            link = cabling.up(above);
        }
        return bits;
    }

    private int ownBits(DemoDevice device, long epochMilli) {
        int bits = schedule.bits(device, epochMilli);
        for (Switched one : called(device, epochMilli)) {
            if (one.holds(epochMilli)) {
                bits |= one.fault().bit();
            }
        }
        return bits;
    }

    private boolean nothingSwitched() {
        return switched.isEmpty() && programme.isEmpty();
    }

    private boolean fed(DemoDevice device) {
        return cabling.up(device).filter(link -> link.feed() == PowerFeed.PORT).isPresent();
    }

    /** What hands and the programme have done to the device up to then. */
    private List<Switched> called(DemoDevice device, long at) {
        if (nothingSwitched()) {
            return List.of();
        }
        List<Switched> byHand = switched.getOrDefault(device.number(), List.of());
        List<Switched> byProgramme = programme.upTo(device, at);
        return byProgramme.isEmpty() ? byHand : byHand.isEmpty() ? byProgramme : both(byHand, byProgramme);
    }

    /** Changes whenever a fault is switched by hand. */
    public int version() {
        return version.get();
    }

    /** The first time after that at which a fault of the device begins or ends by hand or by the programme, or the end of time. */
    public long nextSwitch(DemoDevice device, long after) {
        long next = programme.nextEdge(device, after);
        for (Switched one : switched.getOrDefault(device.number(), List.of())) {
            Stretch stretch = one.stretch();
            long edge = stretch.from() > after ? stretch.from() : stretch.to();
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
        List<Switched> called = called(device, epochMilli);
        List<Switched> outages = outages(device, epochMilli);
        for (Switched one : called) {
            out.restart = Math.max(out.restart, one.restartBy(epochMilli));
            flapping |= one.flapsDown(epochMilli);
        }
        for (Switched one : outages) {
            out.restart = Math.max(out.restart, one.restartBy(epochMilli));
        }
        out.booting = epochMilli < out.restart + schedule.bootMillis(device, out.restart);
        out.silent = flapping || out.booting || Fault.silences(out.faults);
        boolean dead = Fault.PORT_DEAD.in(out.faults);
        out.linked = !dead && !flapping && !Fault.LINK_DOWN.in(out.faults) && epochMilli >= out.restart + LINK_UP;
        out.linkChanged = out.linked ? out.restart + LINK_UP : out.restart;
        if (dead) {
            out.linkChanged = schedule.deadSince(device, epochMilli);
        }
        called.forEach(one -> linkChange(one, epochMilli, out));
        outages.forEach(one -> linkChange(one, epochMilli, out));
    }

    /** When the port that feeds the device had no power because its switch had none. */
    private List<Switched> outages(DemoDevice device, long at) {
        if (nothingSwitched() || !fed(device)) {
            return List.of();
        }
        return called(cabling.across(cabling.up(device).orElseThrow(), device), at).stream()
                .filter(one -> one.fault() == Fault.PORT_DEAD)
                .toList();
    }

    private static void linkChange(Switched one, long at, Outlook out) {
        boolean dead = Fault.PORT_DEAD.in(out.faults);
        long from = one.stretch().from();
        if (one.fault().cutsPower() && one.holds(at)) {
            out.linkChanged = Math.min(out.linkChanged, from);
        } else if (one.flapsDown(at) && !dead) {
            out.linkChanged = one.downSince(at);
        } else if (one.fault() == Fault.LINK_DOWN && !dead && from <= at) {
            out.linkChanged = Math.max(
                    out.linkChanged, one.holds(at) ? from : one.stretch().to());
        }
    }

    /** How many milliseconds of that stretch the device's cable could carry something: it was whole and had power. */
    public long carryingMillis(DemoDevice device, long from, long to) {
        long carrying = to - from - schedule.deadMillis(device, from, to);
        for (Switched one : called(device, to)) {
            if (one.fault().cutsPower() || one.fault() == Fault.LINK_DOWN) {
                long begin = Math.max(from, one.stretch().from());
                long end = Math.max(begin, Math.min(to, one.stretch().to()));
                carrying -= one.overlap(from, to) - schedule.deadMillis(device, begin, end);
            }
        }
        return carrying;
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
