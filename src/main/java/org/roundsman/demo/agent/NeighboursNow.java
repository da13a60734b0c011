package org.roundsman.demo.agent;

import java.util.ArrayList;
import java.util.List;
import org.roundsman.demo.Cabling;
import org.roundsman.demo.DemoDevice;
import org.roundsman.demo.DemoLink;
import org.roundsman.demo.Faults;
import org.roundsman.demo.model.Outlook;

/** Whom a device hears by LLDP at a moment. A neighbour that fell silent stays until its last frame has run out. */
final class NeighboursNow {

    /** Seconds from one frame to the next, and for how many of these a frame counts (defaults of IEEE 802.1AB). */
    static final int TX_SECONDS = 30;

    static final int HOLD = 4;
    private static final long TX_MILLIS = TX_SECONDS * 1000L;
    /** From a device's own restart until it has heard everybody. */
    private static final long FIRST_HEARD = 30_000;

    /**
     * One neighbour.
     *
     * @param localPort the port behind which it is
     * @param timeMark hundredths of a second from the listener's restart to when it was first heard
     * @param index tells neighbours at one port apart
     * @param port the neighbour's own port at the cable
     */
    record Neighbour(int localPort, long timeMark, int index, DemoDevice device, int port) {}

    private NeighboursNow() {}

    static List<Neighbour> of(DemoDevice device, Faults faults, long now, long restart) {
        Cabling cabling = faults.cabling();
        List<DemoLink> links = new ArrayList<>(cabling.down(device));
        cabling.up(device).ifPresent(links::add);
        List<Neighbour> heard = new ArrayList<>();
        Outlook outlook = new Outlook();
        for (DemoLink link : links) {
            DemoDevice other = cabling.across(link, device);
            long since = Cabling.sendsLldp(other) ? heardSince(other, faults, now, outlook) : Long.MAX_VALUE;
            long created = Math.max(since, restart + FIRST_HEARD);
            if (created <= now) {
                int index = 1 + other.number() % 50;
                heard.add(new Neighbour(
                        link.portOf(device), (created - restart) / 10, index, other, link.portAcross(device)));
            }
        }
        return heard;
    }

    /** When the frames that still count began to come, or the end of time where there are none. */
    private static long heardSince(DemoDevice other, Faults faults, long now, Outlook outlook) {
        for (int back = 0; back <= HOLD; back++) {
            // the last one looked at is the oldest frame that still counts
            long at = now - Math.min(back * TX_MILLIS, HOLD * TX_MILLIS - 1);
            faults.look(other, at, outlook);
            if (outlook.tells(at)) {
                return outlook.linkChanged + FIRST_HEARD;
            }
        }
        return Long.MAX_VALUE;
    }
}
