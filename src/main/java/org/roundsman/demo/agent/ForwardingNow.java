package org.roundsman.demo.agent;

import java.util.ArrayList;
import java.util.List;
import org.roundsman.demo.Cabling;
import org.roundsman.demo.DemoDevice;
import org.roundsman.demo.DemoLink;
import org.roundsman.demo.DemoStation;
import org.roundsman.demo.Fault;
import org.roundsman.demo.Faults;
import org.roundsman.demo.agent.BridgeObjects.Learnt;
import org.roundsman.demo.model.Lot;
import org.roundsman.demo.model.Outlook;
import org.roundsman.fleet.DeviceKind;

/** What a switch has learnt at a moment: behind which of its ports each address of the site is. One thread at a time. */
final class ForwardingNow {

    private static final long HOUR = 3_600_000;
    private static final int MOST_CLIENTS = 8;
    /** The group address of LLDP (IEEE 802.1AB), which every bridge keeps to itself. */
    private static final long LLDP_GROUP = 0x0180C200000EL;

    private final Cabling cabling;
    private final Faults faults;
    private final long now;
    private final Outlook outlook = new Outlook();
    private final List<Learnt> found = new ArrayList<>();

    private ForwardingNow(Faults faults, long now) {
        this.cabling = faults.cabling();
        this.faults = faults;
        this.now = now;
    }

    static List<Learnt> of(DemoDevice device, Faults faults, long now) {
        ForwardingNow table = new ForwardingNow(faults, now);
        table.found.add(new Learnt(device.mac(), device.model().uplinkPort(), BridgeObjects.STATUS_SELF, false));
        table.found.add(new Learnt(LLDP_GROUP, 0, BridgeObjects.STATUS_OTHER, false));
        for (DemoStation station : table.cabling.stations(device)) {
            table.learn(station.mac(), station.port(), false);
        }
        for (DemoLink link : table.links(device)) {
            table.past(link, device, link.portOf(device));
        }
        return table.found;
    }

    private List<DemoLink> links(DemoDevice device) {
        List<DemoLink> links = new ArrayList<>(cabling.down(device));
        cabling.up(device).ifPresent(links::add);
        return links;
    }

    /** Everything at the far end of a cable, and past it. */
    private void past(DemoLink link, DemoDevice from, int port) {
        DemoDevice other = cabling.across(link, from);
        DemoDevice below = link.below() == other.number() ? other : from;
        faults.look(below, now, outlook);
        if (!outlook.linked || Fault.HUNG.in(outlook.faults)) {
            return;
        }
        learn(other.mac(), port, false);
        if (other.isAccessPoint()) {
            clients(other, port);
        }
        cabling.stations(other).forEach(station -> learn(station.mac(), port, false));
        if (other.kind() == DeviceKind.ACCESS_POINT) {
            return;
        }
        for (DemoLink next : links(other)) {
            if (next != link) {
                past(next, other, port);
            }
        }
    }

    /** Some of the clients, with addresses of their own choice (the second bit says: locally administered). */
    private void clients(DemoDevice accessPoint, int port) {
        int most = Math.min(MOST_CLIENTS, 1 + accessPoint.peak() / 4);
        for (int i = 0; i < most; i++) {
            long key = Lot.key(accessPoint.mac(), 720 + i);
            if (Lot.unit(Lot.key(key, Math.floorDiv(now, HOUR))) < 0.7) {
                learn(0x0E0000000000L | Lot.mix(key) & 0xFFFFFFFFFFL, port, i % 2 == 1);
            }
        }
    }

    private void learn(long mac, int port, boolean guest) {
        found.add(new Learnt(mac, port, BridgeObjects.STATUS_LEARNED, guest));
    }
}
