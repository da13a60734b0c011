package org.roundsman.demo.agent;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.roundsman.demo.Cabling;
import org.roundsman.demo.DemoDevice;
import org.roundsman.demo.DemoModel;
import org.roundsman.demo.DemoSite;
import org.roundsman.demo.SwitchManner;
import org.roundsman.fleet.DeviceKind;

/** Finds the shape of a device; devices of one model share one. Used while agents start, by one thread. */
final class ShapeBook {

    /** What decides a shape: every site has as many networks as the next. */
    private record Kind(DemoModel model, SwitchManner manner) {}

    private final Map<Kind, Shape> shapes = new HashMap<>();

    Shape of(DemoSite site, DemoDevice device) {
        boolean bridge = device.kind() == DeviceKind.NETWORK_SWITCH;
        SwitchManner manner = bridge ? Cabling.manner(device) : SwitchManner.PLAIN;
        return shapes.computeIfAbsent(new Kind(device.model(), manner), kind -> build(site, device, manner));
    }

    private static Shape build(DemoSite site, DemoDevice device, SwitchManner manner) {
        Shape.Builder shape = new Shape.Builder();
        List<Port> ports = Port.of(device);
        SystemObjects.add(shape);
        InterfaceObjects.add(shape, ports);
        if (device.model() == DemoModel.GI_7) {
            OtherMakerObjects.add(shape, device, site.networks().size());
        } else {
            MakerObjects.add(shape, device, site.networks().size());
        }
        if (Cabling.sendsLldp(device)) {
            LldpObjects.add(shape, device, ports);
        }
        if (device.isAccessPoint() && Cabling.sendsLldp(device)) {
            LldpObjects.addSwitchHeard(shape);
        }
        if (device.kind() == DeviceKind.NETWORK_SWITCH) {
            BridgeObjects.add(shape, ports, manner);
            PowerObjects.add(shape);
        }
        return shape.build();
    }
}
