package org.roundsman.web.chart;

import java.util.List;
import java.util.OptionalDouble;

/** Five steps of channel utilisation, darker for more; a sixth class for a figure that could not be read. */
public final class Tint {

    static final String UNKNOWN = "ux";

    /** The classes in order, for the legend. */
    public static final List<String> STEPS = List.of("u0", "u1", "u2", "u3", "u4");

    private Tint() {}

    /** Style class of a utilisation in per cent: steps of 20. */
    static String of(OptionalDouble utilisation) {
        if (utilisation.isEmpty()) {
            return UNKNOWN;
        }
        return STEPS.get((int) Math.max(0, Math.min(4, utilisation.getAsDouble() / 20)));
    }
}
