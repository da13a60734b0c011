package org.roundsman.snmp.plan;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.roundsman.measure.Metric;

/** One source for each metric of one subject: the first offered that makes sense, else the first offered. */
final class Choices<T> {

    private final Map<Metric, T> first = new EnumMap<>(Metric.class);
    private final Map<Metric, T> sensible = new EnumMap<>(Metric.class);

    void offer(Metric metric, T source, boolean makesSense) {
        first.putIfAbsent(metric, source);
        if (makesSense) {
            sensible.putIfAbsent(metric, source);
        }
    }

    List<T> chosen() {
        return first.keySet().stream()
                .map(metric -> sensible.getOrDefault(metric, first.get(metric)))
                .toList();
    }
}
