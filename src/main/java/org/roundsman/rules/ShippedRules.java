package org.roundsman.rules;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import org.roundsman.alarms.AlarmType;

/** Every rule as it is shipped: one for each type of alarm. */
public final class ShippedRules {

    private static final Map<AlarmType, Rule> BY_TYPE = byType();

    private ShippedRules() {}

    /** In the order of the alarm inventory. */
    public static List<Rule> all() {
        return List.copyOf(BY_TYPE.values());
    }

    public static Rule of(AlarmType type) {
        return Objects.requireNonNull(BY_TYPE.get(type), () -> "no rule for " + type);
    }

    private static Map<AlarmType, Rule> byType() {
        Map<AlarmType, Rule> rules = new EnumMap<>(AlarmType.class);
        Stream.of(ReachRules.all(), AirRules.all(), DeviceRules.all(), RecordRules.all(), ServiceRules.all())
                .flatMap(List::stream)
                .forEach(rule -> rules.put(rule.type(), rule));
        return rules;
    }
}
