package org.roundsman.measure;

import java.util.List;
import java.util.Map;

/**
 * The slow-moving facts of one device, read at the slow pace.
 *
 * @param values by fact; what the device did not say has no entry
 * @param radios its radios, ordered by number
 * @param networks the SSIDs it carries, without repeats
 */
public record Facts(Map<Fact, String> values, List<RadioFacts> radios, List<String> networks) {

    public Facts {
        values = Map.copyOf(values);
        radios = List.copyOf(radios);
        networks = List.copyOf(networks);
    }

    /**
     * One radio.
     *
     * @param number its number on the device as the profile maps it, 1 to 32767, stable across restarts
     * @param label what the device calls it, or empty
     * @param mac its address in the form 00:00:5e:00:53:01, or empty
     */
    public record RadioFacts(int number, String label, String mac) {}
}
