package org.roundsman.demo.agent;

import java.util.HashMap;
import java.util.Map;
import org.roundsman.demo.DemoDevice;
import org.roundsman.demo.DemoModel;
import org.roundsman.demo.DemoSite;

/** Finds the shape of a device; devices of one model share one. Used while agents start, by one thread. */
final class ShapeBook {

    private final Map<DemoModel, Shape> shapes = new HashMap<>();

    /** Every site has as many networks as the next, so that the model alone decides. */
    Shape of(DemoSite site, DemoDevice device) {
        return shapes.computeIfAbsent(device.model(), model -> build(site, device));
    }

    private static Shape build(DemoSite site, DemoDevice device) {
        Shape.Builder shape = new Shape.Builder();
        SystemObjects.add(shape);
        InterfaceObjects.add(shape, Port.of(device));
        MakerObjects.add(shape, device, site.networks().size());
        return shape.build();
    }
}
