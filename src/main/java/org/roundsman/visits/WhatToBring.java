package org.roundsman.visits;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.roundsman.fleet.Device;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.fleet.Model;

/** What to bring, from what is known of the devices to look at. Common practice, no source. Pure. */
public final class WhatToBring {

    private static final String EXTERNAL = "external";

    private WhatToBring() {}

    /** One thing a line, no repeats. */
    public static List<String> of(List<Unit> units) {
        Set<String> things = new LinkedHashSet<>();
        units.forEach(unit -> things.addAll(of(unit)));
        things.add("Laptop with a wired port, console cable, and the credentials of the site.");
        things.add("Patch cables that work, and a cable tester that shows all four pairs.");
        return List.copyOf(things);
    }

    private static List<String> of(Unit unit) {
        Device device = unit.device();
        List<String> things = new ArrayList<>();
        things.add("Spare: " + spare(unit) + ".");
        things.add(power(unit));
        boolean mounted = device.model != null && !device.model.mount.isEmpty();
        if (mounted || device.kind == DeviceKind.ACCESS_POINT) {
            things.add(mount(device));
        }
        if (device.kind == DeviceKind.ACCESS_POINT) {
            antenna(device.model).ifPresent(things::add);
        }
        if (HighPlaces.needsClimbing(device)) {
            things.add("Access to a mast or roof: a lift or climbing gear with fall protection, and a second person;"
                    + " place “"
                    + device.place + "”.");
        } else if (HighPlaces.needsLadder(device)) {
            things.add("Ladder: the place is “" + device.place + "”.");
        }
        return things;
    }

    private static String spare(Unit unit) {
        Model model = unit.device().model;
        if (model != null) {
            return "one " + model.maker + " " + model.name + (model.outdoor ? " (outdoor)" : "");
        }
        String said = unit.said().getOrDefault("MODEL", "");
        return said.isEmpty()
                ? "one " + unit.device().kind.word() + "; its model is not known"
                : "one " + (unit.said().getOrDefault("MAKER", "") + " " + said).strip();
    }

    private static String power(Unit unit) {
        Model model = unit.device().model;
        if (model != null && model.mains) {
            return "Power: by mains; bring the power cord or supply of that model. What is wired fixed is for a"
                    + " licensed electrician, under the local code.";
        }
        if (model != null && model.poeClass != null) {
            return "Power: " + PoeClass.words(model.poeClass)
                    + "; an injector for that class rules the switch port out.";
        }
        boolean fed = !unit.up().isEmpty()
                && unit.up().get(0).port().flatMap(port -> port.power()).isPresent();
        if (fed) {
            return "Power: the switch port can deliver PoE; the class of the device is not known, so bring an injector"
                    + " for the highest class.";
        }
        return "Power: by mains or not known; bring the power supply of that model.";
    }

    private static String mount(Device device) {
        String where = device.place.isEmpty() ? "the place is not entered" : "for “" + device.place + "”";
        boolean known = device.model != null && !device.model.mount.isEmpty();
        String what = known ? device.model.mount + ", with its screws" : "bracket and screws of that model";
        return "Mount: " + what + ", " + where + ".";
    }

    private static java.util.Optional<String> antenna(Model model) {
        if (model == null || model.antenna.isEmpty()) {
            return java.util.Optional.of(
                    "Antenna: not known; look before you drive, or bring spare antennas and leads.");
        }
        return java.util.Optional.of(
                model.antenna.equals(EXTERNAL)
                        ? "Antenna: external; spare antennas of the same gain, leads, and tape that seals the plugs."
                        : "Antenna: internal; nothing to bring.");
    }
}
