package org.roundsman.rules;

import java.time.Duration;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.roundsman.alarms.AlarmType;

/**
 * The values of every rule for everything, as they were at one time. Immutable and safe between threads; asking it costs a
 * few look-ups.
 */
public final class RuleSet {

    private static final RuleLevel[] LEVELS = RuleLevel.values();

    private final Map<AlarmType, Layers> layers = new EnumMap<>(AlarmType.class);

    private record Place(RuleLevel level, long id) {}

    /** What is set of one rule, by where. */
    private record Layers(Rule rule, RuleValues everywhere, Map<Place, RuleOverride> overrides) {}

    /** Shipped values with these laid over them. */
    public RuleSet(List<RuleOverride> overrides) {
        for (Rule rule : ShippedRules.all()) {
            Map<Place, RuleOverride> own = new HashMap<>();
            overrides.stream()
                    .filter(one -> one.type() == rule.type())
                    .forEach(one -> own.put(new Place(one.level(), one.targetId()), one));
            RuleOverride all = own.get(new Place(RuleLevel.ALL, 0));
            layers.put(rule.type(), new Layers(rule, over(rule, all == null ? List.of() : List.of(all)), own));
        }
    }

    /** Shipped values and nothing else. */
    public static RuleSet shipped() {
        return new RuleSet(List.of());
    }

    /** The values that hold there. */
    public RuleValues of(AlarmType type, RuleTarget target) {
        Layers of = layers.get(type);
        List<RuleOverride> found = found(of, target);
        return found.isEmpty() || found.size() == 1 && found.get(0).level() == RuleLevel.ALL
                ? of.everywhere
                : over(of.rule, found);
    }

    /** What people call the place of an override; empty for all. */
    String nameOf(AlarmType type, RuleLevel level, long targetId) {
        RuleOverride one = layers.get(type).overrides.get(new Place(level, targetId));
        return one == null ? "" : one.targetName();
    }

    /** Where the value of each field comes from: the override, or empty where it is the shipped one. */
    public Map<RuleField, Optional<RuleOverride>> origins(AlarmType type, RuleTarget target) {
        Layers of = layers.get(type);
        Map<RuleField, Optional<RuleOverride>> origins = new EnumMap<>(RuleField.class);
        of.rule.settable().forEach(field -> origins.put(field, Optional.empty()));
        for (RuleOverride one : found(of, target)) {
            one.fields().keySet().forEach(field -> origins.put(field, Optional.of(one)));
        }
        return origins;
    }

    /** The texts of the fields that hold there. */
    public Map<RuleField, String> texts(AlarmType type, RuleTarget target) {
        Layers of = layers.get(type);
        return laid(of.rule, found(of, target));
    }

    /** The longest time that any rule must look back. */
    public Duration memory() {
        return layers.values().stream()
                .flatMap(of -> Stream.concat(
                        Stream.of(of.everywhere),
                        of.overrides.values().stream().map(one -> over(of.rule, List.of(one)))))
                .map(RuleValues::memory)
                .max(Duration::compareTo)
                .orElse(Duration.ZERO);
    }

    /** Whether the two hold the same values there, for every rule. */
    public boolean sameFor(RuleTarget target, RuleSet other) {
        return layers.keySet().stream().allMatch(type -> Objects.equals(of(type, target), other.of(type, target)));
    }

    private static List<RuleOverride> found(Layers of, RuleTarget target) {
        if (of.overrides.isEmpty()) {
            return List.of();
        }
        List<RuleOverride> found = new ArrayList<>(LEVELS.length);
        for (RuleLevel level : LEVELS) {
            long id = target.idAt(level);
            RuleOverride one = id == 0 && level != RuleLevel.ALL ? null : of.overrides.get(new Place(level, id));
            if (one != null) {
                found.add(one);
            }
        }
        return found;
    }

    private static RuleValues over(Rule rule, List<RuleOverride> ascending) {
        return RuleValues.of(laid(rule, ascending));
    }

    private static Map<RuleField, String> laid(Rule rule, List<RuleOverride> ascending) {
        Map<RuleField, String> fields = new EnumMap<>(rule.fields());
        ascending.forEach(one -> fields.putAll(one.fields()));
        fields.keySet().retainAll(rule.settable());
        return fields;
    }
}
