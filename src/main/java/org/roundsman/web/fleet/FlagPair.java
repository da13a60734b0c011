package org.roundsman.web.fleet;

import java.util.List;

/**
 * How a device or a site stands in both matters that people decide on.
 *
 * @param firmware one flag of a device, several of a site; empty where there is nothing to judge
 * @param warranty likewise
 */
public record FlagPair(List<Flag> firmware, List<Flag> warranty) {

    /** Nothing to judge. */
    public static final FlagPair NONE = new FlagPair(List.of(), List.of());

    public FlagPair {
        firmware = List.copyOf(firmware);
        warranty = List.copyOf(warranty);
    }
}
