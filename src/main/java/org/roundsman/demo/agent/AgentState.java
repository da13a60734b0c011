package org.roundsman.demo.agent;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.roundsman.demo.DemoDevice;
import org.roundsman.demo.DemoFleet;
import org.roundsman.demo.Fault;
import org.roundsman.demo.Faults;
import org.roundsman.demo.model.Counters;
import org.roundsman.demo.model.Figures;
import org.roundsman.demo.model.Lot;
import org.roundsman.demo.model.Outlook;
import org.roundsman.demo.model.Usage;

/**
 * One agent: its device, and what it would answer at the moment last looked at. One thread at a time: the one that
 * serves its socket.
 */
final class AgentState {

    private static final long MINUTE = 60_000;
    private static final long GAUGE_MILLIS = 1000;
    private static final double LOSS = 0.02;
    /** Engine boots are counted in minutes from 2020-01-01, so that every restart raises them, whatever caused it. */
    private static final long BOOTS_FROM = 1_577_836_800_000L;

    final DemoDevice device;
    final String location;
    final byte[] community;
    final byte[][] ssids;
    final Usm usm;
    private final Faults faults;
    private final Usage usage;
    final Counters counters;
    final Figures figures;
    private final PortsNow ports;
    private final Outlook outlook = new Outlook();
    private long now;
    private long outlookMinute = Long.MIN_VALUE;
    private int outlookVersion = -1;
    private long gaugeTick = Long.MIN_VALUE;
    private long asked;

    AgentState(DemoFleet fleet, DemoDevice device, Faults faults) {
        this.device = device;
        this.location = device.place() + ", " + fleet.siteOf(device).name();
        this.ssids = fleet.siteOf(device).networks().stream()
                .map(network -> text(network.ssid()))
                .toArray(byte[][]::new);
        this.faults = faults;
        this.usage = new Usage(fleet, device);
        this.counters = new Counters(usage, device, faults);
        this.figures = new Figures(device.radios().size());
        this.usm = Usm.of(device);
        this.ports = device.isAccessPoint() ? null : new PortsNow(device, faults);
        this.community = Secrets.community(device.accepts());
    }

    /** Of the unit that stands there at the moment. */
    String serial() {
        return Fault.UNIT_SWAPPED.in(faults()) ? device.swappedSerial() : device.serial();
    }

    /** Moves to that moment. Returns whether the agent is there to answer. */
    boolean look(long epochMilli) {
        now = epochMilli;
        long minute = Math.floorDiv(now, MINUTE);
        // nothing on the schedule changes within a minute, but what was switched by hand may end in one
        if (minute != outlookMinute || outlookVersion != faults.version() || flappingByHand() || outlook.silent) {
            outlookVersion = faults.version();
            outlookMinute = minute;
            faults.look(device, now, outlook);
            gaugeTick = Long.MIN_VALUE;
        }
        if (outlook.silent) {
            return false;
        }
        long tick = Math.floorDiv(now, GAUGE_MILLIS);
        if (tick != gaugeTick) {
            gaugeTick = tick;
            usage.show(tick * GAUGE_MILLIS, outlook.faults, figures);
        }
        counters.move(now, outlook.restart);
        return true;
    }

    /** The ports of a switch or gateway at the moment; null for an access point. */
    PortsNow ports() {
        if (ports != null) {
            ports.move(now, outlook.restart);
        }
        return ports;
    }

    /** The switch that an access point hears by LLDP, or null while there is none that tells about itself. */
    NeighboursNow.Neighbour heard() {
        List<NeighboursNow.Neighbour> all = NeighboursNow.of(device, faults, now, outlook.restart);
        return all.isEmpty() ? null : all.get(0);
    }

    Faults faultsOfAll() {
        return faults;
    }

    private boolean flappingByHand() {
        return Fault.FLAPPING.in(outlook.faults);
    }

    /** Whether a fault switched by hand makes it take none of the credentials that the service knows. */
    boolean keepsOut() {
        return Fault.CREDENTIAL_WRONG.in(outlook.faults) && !device.standing().contains(Fault.CREDENTIAL_WRONG);
    }

    long now() {
        return now;
    }

    int faults() {
        return outlook.faults;
    }

    /** Whether the request that has just come is one of the two in a hundred that a lossy line loses. */
    boolean loses() {
        asked++;
        return Fault.LOSSY.in(outlook.faults) && Lot.unit(Lot.key(device.number(), 730, asked)) < LOSS;
    }

    /** Milliseconds since the last restart. */
    long upMillis() {
        return now - outlook.restart;
    }

    int engineBoots() {
        return (int) ((outlook.restart - BOOTS_FROM) / MINUTE);
    }

    int engineTime() {
        return (int) (upMillis() / 1000);
    }

    static byte[] text(String value) {
        return value.getBytes(StandardCharsets.UTF_8);
    }
}
