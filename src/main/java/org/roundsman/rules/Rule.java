package org.roundsman.rules;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.Resource;
import org.roundsman.alarms.Severity;

/**
 * A rule as it is shipped, with its explanation.
 *
 * @param type of the alarm that it raises
 * @param kind how it judges
 * @param low whether low figures are bad; otherwise high ones are
 * @param unit of its figure, such as {@code %}, or empty
 * @param fields the shipped values as texts; what it has no value of cannot be set
 * @param carrying the severities for switches and gateways, on which others hang, until somebody sets one; empty where
 *     that of the fields holds for them too
 * @param reads what it looks at
 * @param why why these values
 * @param source where they come from, or that there is no source
 */
public record Rule(
        AlarmType type,
        Kind kind,
        boolean low,
        String unit,
        Map<RuleField, String> fields,
        Optional<Carrying> carrying,
        String reads,
        String why,
        String source) {

    /**
     * Shipped severities for switches and gateways.
     *
     * @param lost when they pass nothing on any more
     * @param passing when they pass traffic on, and only their management is lost
     */
    public record Carrying(Severity lost, Severity passing) {}

    /** How a rule judges. */
    public enum Kind {
        /** A figure against thresholds, each held for a time. */
        FIGURE,
        /** Something is so, or is not. */
        FACT,
        /** How often something happened within a time. */
        COUNT,
        /** Found elsewhere: from the site's topology, or from what people entered. Here it only has a severity and a switch. */
        ELSEWHERE
    }

    public Rule {
        fields = new EnumMap<>(fields);
    }

    /** What can be set of it, in the order of {@link RuleField}. */
    public Set<RuleField> settable() {
        return EnumSet.copyOf(fields.keySet());
    }

    /** The shipped values. */
    public RuleValues shipped() {
        return RuleValues.of(fields);
    }

    @Override
    public Map<RuleField, String> fields() {
        return Map.copyOf(fields);
    }

    /** Whether stored readings or events can tell what it would have done in the past. */
    public boolean hasPast() {
        return kind != Kind.ELSEWHERE && hasTargets();
    }

    /** Whether it can have other values for a customer, site, model or device; those about the service itself cannot. */
    public boolean hasTargets() {
        return type.resource() != Resource.Kind.SERVICE;
    }
}
