package org.roundsman.discovery.recognise;

import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** How many devices repeat a value: one that several share proves nothing. */
final class Shared {

    private final Map<Mark, Map<String, Integer>> found = new EnumMap<>(Mark.class);
    private final Map<Mark, Map<String, Integer>> known = new EnumMap<>(Mark.class);

    Shared(List<Group> groups, List<Known> devices) {
        groups.forEach(group -> count(found, group.identity()));
        devices.forEach(device -> count(known, device.identity()));
    }

    private static void count(Map<Mark, Map<String, Integer>> counts, Identity identity) {
        for (Mark mark : Mark.values()) {
            for (String value : identity.at(mark)) {
                counts.computeIfAbsent(mark, m -> new HashMap<>()).merge(value, 1, Integer::sum);
            }
        }
    }

    /** The number of devices that repeat it, counted where they are more: in the sweep or in the fleet. */
    int by(Mark mark, String value) {
        return Math.max(count(found, mark, value), count(known, mark, value));
    }

    private static int count(Map<Mark, Map<String, Integer>> counts, Mark mark, String value) {
        return counts.getOrDefault(mark, Map.of()).getOrDefault(value, 0);
    }
}
