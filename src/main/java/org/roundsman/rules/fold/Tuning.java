package org.roundsman.rules.fold;

import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.roundsman.alarms.AlarmType;
import org.roundsman.rules.Rule;
import org.roundsman.rules.RuleSet;
import org.roundsman.rules.RuleTarget;
import org.roundsman.rules.RuleValues;
import org.roundsman.rules.ShippedRules;

/** The values of all rules for one device, made ready for the hot path. Immutable; devices with the same values share it. */
public final class Tuning {

    private final Map<AlarmType, Ladder> ladders = new EnumMap<>(AlarmType.class);
    private final Map<AlarmType, RuleValues> values = new EnumMap<>(AlarmType.class);

    private Tuning(Map<AlarmType, RuleValues> all) {
        all.forEach((type, of) -> {
            values.put(type, of);
            if (of.enabled() && ShippedRules.of(type).kind() != Rule.Kind.ELSEWHERE) {
                ladders.put(type, Ladder.of(ShippedRules.of(type), of));
            }
        });
    }

    /** The ladder of a rule, or null where it is switched off. */
    public Ladder ladder(AlarmType type) {
        return ladders.get(type);
    }

    public RuleValues values(AlarmType type) {
        return values.get(type);
    }

    /** Makes tunings from one set of rules. Used by one thread. */
    public static final class Book {
        private final RuleSet rules;
        private final Collection<AlarmType> only;
        private final Map<List<RuleValues>, Tuning> made = new HashMap<>();

        /** Of all rules. */
        public Book(RuleSet rules) {
            this(rules, List.of(AlarmType.values()));
        }

        /** Of these rules; the others are left out as if they were switched off. */
        public Book(RuleSet rules, Collection<AlarmType> only) {
            this.rules = rules;
            this.only = List.copyOf(only);
        }

        public Tuning of(RuleTarget target) {
            List<RuleValues> key = new ArrayList<>();
            only.forEach(type -> key.add(rules.of(type, target)));
            return made.computeIfAbsent(key, values -> {
                Map<AlarmType, RuleValues> byType = new EnumMap<>(AlarmType.class);
                int next = 0;
                for (AlarmType type : only) {
                    byType.put(type, values.get(next++));
                }
                return new Tuning(byType);
            });
        }
    }
}
