package org.roundsman.demo.invent;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.roundsman.demo.Cabling;
import org.roundsman.demo.DemoDevice;
import org.roundsman.demo.DemoFleet;
import org.roundsman.demo.DemoLink;
import org.roundsman.demo.DemoModel;
import org.roundsman.demo.DemoSite;
import org.roundsman.demo.DemoStation;
import org.roundsman.demo.PowerFeed;
import org.roundsman.demo.model.Lot;
import org.roundsman.fleet.DeviceKind;

/** Lays the cables of every site. */
public final class CableLaying {

    private static final int GATEWAY_PORT = 1;
    /** The last but one port stays off, and the last one goes on to the next switch. */
    private static final int EDGE_PORTS = DemoModel.SWITCH_PORTS - 2;

    private static final int NEXT_SWITCH_PORT = DemoModel.SWITCH_PORTS;
    private static final List<String> STATIONS = List.of("printer", "till", "desk phone", "camera", "desk", "door");

    private final DemoFleet fleet;
    private final List<DemoLink> up = new ArrayList<>();
    private final List<List<DemoLink>> down = new ArrayList<>();
    private final List<List<DemoStation>> stations = new ArrayList<>();

    private CableLaying(DemoFleet fleet) {
        this.fleet = fleet;
        for (int i = 0; i < fleet.devices().size(); i++) {
            up.add(null);
            down.add(List.of());
            stations.add(List.of());
        }
    }

    /** The cables of each device, by its number. */
    public static List<Cabling.Wires> lay(DemoFleet fleet) {
        CableLaying laying = new CableLaying(fleet);
        fleet.sites().forEach(laying::site);
        List<Cabling.Wires> wires = new ArrayList<>();
        for (int i = 0; i < fleet.devices().size(); i++) {
            List<DemoLink> below = laying.down.get(i).stream()
                    .sorted(Comparator.comparingInt(DemoLink::abovePort))
                    .toList();
            wires.add(new Cabling.Wires(laying.up.get(i), below, laying.stations.get(i)));
        }
        return List.copyOf(wires);
    }

    private void site(DemoSite site) {
        DemoDevice above = site.devices().get(0);
        int port = GATEWAY_PORT;
        List<DemoDevice> switches = site.devices().stream()
                .filter(d -> d.kind() == DeviceKind.NETWORK_SWITCH)
                .toList();
        List<DemoDevice> accessPoints =
                site.devices().stream().filter(DemoDevice::isAccessPoint).toList();
        for (int i = 0; i < switches.size(); i++) {
            link(switches.get(i), above, port);
            above = switches.get(i);
            port = NEXT_SWITCH_PORT;
            int from = Math.min(accessPoints.size(), i * DevicePlacing.ACCESS_POINTS_PER_SWITCH);
            int to = Math.min(accessPoints.size(), from + DevicePlacing.ACCESS_POINTS_PER_SWITCH);
            edge(switches.get(i), accessPoints.subList(from, to));
        }
    }

    /** Access points take some ports of the front plate in their order, other things some of those that are left. */
    private void edge(DemoDevice above, List<DemoDevice> accessPoints) {
        long key = Lot.key(fleet.seed(), 700, above.number());
        List<Integer> drawn = IntStream.rangeClosed(1, EDGE_PORTS)
                .boxed()
                .sorted(Comparator.comparingDouble(port -> Lot.unit(Lot.key(key, port))))
                .toList();
        int count = accessPoints.size();
        List<Integer> ports = drawn.subList(0, count).stream().sorted().toList();
        for (int i = 0; i < count; i++) {
            link(accessPoints.get(i), above, ports.get(i));
        }
        int others = 3 + Lot.below(Lot.key(key, 90), 4);
        List<DemoStation> found = new ArrayList<>();
        for (int port : drawn.subList(count, Math.min(EDGE_PORTS, count + others)).stream()
                .sorted()
                .toList()) {
            long lot = Lot.key(key, 100, port);
            // 0A: locally administered
            long mac = 0x0A0000000000L | Lot.mix(lot) & 0xFFFFFFFFFFL;
            found.add(new DemoStation(port, mac, STATIONS.get(Lot.below(lot, STATIONS.size()))));
        }
        stations.set(above.number(), List.copyOf(found));
    }

    private void link(DemoDevice below, DemoDevice above, int abovePort) {
        DemoLink link =
                new DemoLink(below.number(), below.model().uplinkPort(), above.number(), abovePort, feed(below));
        up.set(below.number(), link);
        List<DemoLink> all = new ArrayList<>(down.get(above.number()));
        all.add(link);
        down.set(above.number(), all);
    }

    private static PowerFeed feed(DemoDevice below) {
        if (!below.isAccessPoint()) {
            return PowerFeed.MAINS;
        }
        return below.model().poeClass() == null ? PowerFeed.INJECTOR : PowerFeed.PORT;
    }
}
