package org.roundsman.demo.agent;

import org.roundsman.demo.Cabling;
import org.roundsman.demo.DemoDevice;
import org.roundsman.demo.DemoLink;
import org.roundsman.demo.DemoModel;
import org.roundsman.demo.DemoStation;
import org.roundsman.demo.Fault;
import org.roundsman.demo.Faults;
import org.roundsman.demo.PowerFeed;
import org.roundsman.demo.model.Lot;
import org.roundsman.demo.model.Outlook;
import org.roundsman.fleet.DeviceKind;

/**
 * The ports of one switch or gateway, as what hangs on them has them at the moment last looked at. Ports are asked for
 * by their number on the front plate. One thread at a time.
 */
final class PortsNow {

    /** States of pethPsePortDetectionStatus (RFC 3621). */
    static final int POWER_OFF = 1;

    static final int POWER_SEARCHING = 2;
    static final int POWER_DELIVERED = 3;
    static final int POWER_FAULT = 4;

    private static final long TICK_MILLIS = 1000;
    private static final int GIGABIT = 1000;
    /** Tenths of a watt that a device of each class may draw (IEEE 802.3, from memory), by class. */
    private static final int[] CLASS_TENTHS = {130, 38, 65, 130, 255};

    /** One port. */
    private static final class Jack {
        DemoLink link;
        DemoDevice below;
        DemoStation station;
        boolean up;
        long changed;
        boolean slow;
        boolean dead;
        boolean poweredOff;
        long linked;
        int rate;
    }

    private final DemoDevice device;
    private final Faults faults;
    private final Jack[] jacks;
    private final Outlook outlook = new Outlook();
    private long tick = Long.MIN_VALUE;
    private int version = -1;
    private long restart = Long.MIN_VALUE;

    PortsNow(DemoDevice device, Faults faults) {
        this.device = device;
        this.faults = faults;
        this.jacks = new Jack[device.model().uplinkPort() + 1];
        for (int i = 1; i < jacks.length; i++) {
            jacks[i] = new Jack();
            jacks[i].rate = 200 + Lot.below(Lot.key(device.number(), 710, i), 4000);
        }
        Cabling cabling = faults.cabling();
        for (DemoLink link : cabling.down(device)) {
            jacks[link.abovePort()].link = link;
            jacks[link.abovePort()].below = cabling.across(link, device);
        }
        for (DemoStation station : cabling.stations(device)) {
            jacks[station.port()].station = station;
        }
    }

    /** Moves to a moment; the restart is the device's own last one. */
    void move(long now, long ownRestart) {
        long asked = Math.floorDiv(now, TICK_MILLIS);
        if (asked == tick && version == faults.version() && restart == ownRestart) {
            return;
        }
        tick = asked;
        version = faults.version();
        restart = ownRestart;
        for (int i = 1; i < jacks.length; i++) {
            look(jacks[i], now);
        }
        Jack uplink = jacks[jacks.length - 1];
        uplink.up = true;
        uplink.changed = ownRestart;
    }

    private void look(Jack jack, long now) {
        jack.up = jack.station != null;
        jack.changed = restart;
        jack.linked = jack.up ? now - restart : 0;
        if (jack.below != null) {
            faults.look(jack.below, now, outlook);
            jack.up = outlook.linked;
            jack.changed = Math.max(restart, outlook.linkChanged);
            jack.slow = Fault.PORT_SLOW.in(outlook.faults);
            jack.dead = Fault.PORT_DEAD.in(outlook.faults);
            jack.poweredOff = Fault.POWER_OFF.in(outlook.faults);
            jack.linked = faults.carryingMillis(jack.below, restart, now);
        }
    }

    boolean enabled(int port) {
        return device.kind() != DeviceKind.NETWORK_SWITCH || port != DemoModel.SWITCH_PORTS - 1;
    }

    /** Whether the port may feed power: nobody has switched that off. */
    boolean feeds(int port) {
        return enabled(port) && !jacks[port].poweredOff;
    }

    boolean up(int port) {
        return jacks[port].up;
    }

    /** Mb/s; 0 while it is down. */
    int speed(int port) {
        Jack jack = jacks[port];
        return jack.up ? jack.slow ? 100 : GIGABIT : 0;
    }

    /** Hundredths of a second from the device's restart to the last change. */
    long lastChange(int port) {
        return (jacks[port].changed - restart) / 10;
    }

    /** Octets since the restart that came in from what hangs there. */
    long octetsIn(int port) {
        return jacks[port].linked * jacks[port].rate / 1000;
    }

    long octetsOut(int port) {
        return jacks[port].linked * jacks[port].rate / 250;
    }

    /** What a person wrote beside the port. */
    String alias(int port) {
        Jack jack = jacks[port];
        if (jack.below != null) {
            return "to " + jack.below.name();
        }
        return jack.station == null ? "" : jack.station.label();
    }

    /** Half of the dead ports report a fault, the other half just go on looking for somebody to power. */
    int power(int port) {
        Jack jack = jacks[port];
        if (!feeds(port)) {
            return POWER_OFF;
        }
        if (jack.link == null || jack.link.feed() != PowerFeed.PORT) {
            return POWER_SEARCHING;
        }
        if (jack.dead) {
            return Lot.unit(Lot.key(jack.below.number(), 711)) < 0.5 ? POWER_FAULT : POWER_SEARCHING;
        }
        return POWER_DELIVERED;
    }

    /** Class of IEEE 802.3 of what the port powers now; 0 where it powers nothing. */
    int powerClass(int port) {
        return power(port) == POWER_DELIVERED ? jacks[port].below.model().poeClass() : 0;
    }

    /** Watts that all ports deliver. */
    int watts() {
        int tenths = 0;
        for (int port = 1; port <= DemoModel.SWITCH_PORTS; port++) {
            if (power(port) == POWER_DELIVERED) {
                double share = 0.5 + 0.3 * Lot.unit(Lot.key(jacks[port].below.number(), 712));
                tenths += (int) (share * CLASS_TENTHS[powerClass(port)]);
            }
        }
        return tenths / 10;
    }

    /** How often what the port powered has gone away since the restart. */
    int absent(int port) {
        return jacks[port].dead ? 1 : 0;
    }
}
