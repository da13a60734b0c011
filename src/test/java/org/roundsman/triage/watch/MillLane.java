package org.roundsman.triage.watch;

import java.util.Arrays;
import java.util.stream.LongStream;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.Resource;

/** An invented site with a gateway, a switch at its port 3, and six access points at the ports 1 to 6 of the switch. */
record MillLane(long site, long gateway, long bridge, long[] points) {

    /** A world with a site elsewhere that answers, so that it is not we who are blind. */
    static World world(String database) {
        World world = new World(database);
        long other = world.desk.fleet.site(world.desk.customer, "Harbour Road", "Europe/London");
        world.device(other, "ap-x", "ACCESS_POINT");
        world.device(other, "ap-y", "ACCESS_POINT");
        return world;
    }

    /** One more such site in that world. */
    static MillLane in(World world) {
        long site = world.desk.fleet.site(
                world.desk.customer, "Mill Lane " + world.desk.fleet.count("site"), "Europe/London");
        long gateway = world.device(site, "gw-1", "GATEWAY");
        long bridge = world.device(site, "sw-2", "NETWORK_SWITCH");
        long[] points = LongStream.rangeClosed(1, 6)
                .map(i -> world.device(site, "ap-" + i, "ACCESS_POINT"))
                .toArray();
        world.hangs(bridge, gateway, 3);
        for (int i = 0; i < points.length; i++) {
            world.hangs(points[i], bridge, i + 1);
        }
        return new MillLane(site, gateway, bridge, points);
    }

    /** All its devices. */
    long[] all() {
        return LongStream.concat(LongStream.of(gateway, bridge), Arrays.stream(points))
                .toArray();
    }

    AlarmKey uplink() {
        return AlarmKey.of(AlarmType.UPLINK_LOST, Resource.site(site));
    }
}
