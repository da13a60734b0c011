package org.roundsman.visits;

import java.util.Locale;
import java.util.regex.Pattern;
import org.roundsman.fleet.Device;

/** What the words of a place say about getting there. Common practice, no source. */
final class HighPlaces {

    private static final Pattern LADDER =
            Pattern.compile("\\b(ceiling|loft|beam|truss|gallery|high|above|top|roof|mast|pole|tower|facade|eaves)\\b");
    private static final Pattern CLIMB = Pattern.compile("\\b(mast|roof|pole|tower|facade|eaves|truss)\\b");
    private static final Pattern OUTSIDE = Pattern.compile(
            "\\b(mast|roof|pole|tower|facade|eaves|outdoors?|outside|yard|pier|quay|garden|terrace)\\b");

    private HighPlaces() {}

    static boolean needsLadder(Device device) {
        return LADDER.matcher(place(device)).find();
    }

    static boolean needsClimbing(Device device) {
        return CLIMB.matcher(place(device)).find();
    }

    /** By its model or by its place. */
    static boolean outdoors(Device device) {
        return device.model != null && device.model.outdoor
                || OUTSIDE.matcher(place(device)).find();
    }

    private static String place(Device device) {
        return device.place.toLowerCase(Locale.ROOT);
    }
}
