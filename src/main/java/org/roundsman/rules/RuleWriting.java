package org.roundsman.rules;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.Severity;

/** Writes a shipped rule down. */
final class RuleWriting {

    /** Said of values that nobody has written down anywhere. */
    static final String COMMON = "Common practice, no source.";

    private final AlarmType type;
    private final Rule.Kind kind;
    private final Map<RuleField, String> fields = new EnumMap<>(RuleField.class);
    private boolean low;
    private String unit = "";
    private Optional<Rule.Carrying> carrying = Optional.empty();

    private RuleWriting(AlarmType type, Rule.Kind kind) {
        this.type = type;
        this.kind = kind;
        fields.put(RuleField.ENABLED, "yes");
    }

    static RuleWriting figure(AlarmType type, String unit) {
        RuleWriting writing = new RuleWriting(type, Rule.Kind.FIGURE);
        writing.unit = unit;
        return writing;
    }

    static RuleWriting fact(AlarmType type, String severity) {
        return new RuleWriting(type, Rule.Kind.FACT).with(RuleField.SEVERITY, severity);
    }

    static RuleWriting count(AlarmType type, int seconds) {
        return new RuleWriting(type, Rule.Kind.COUNT).with(RuleField.WINDOW, String.valueOf(seconds));
    }

    static RuleWriting elsewhere(AlarmType type, String severity) {
        return new RuleWriting(type, Rule.Kind.ELSEWHERE).with(RuleField.SEVERITY, severity);
    }

    RuleWriting with(RuleField field, String text) {
        fields.put(field, text);
        return this;
    }

    /** Low figures are bad. */
    RuleWriting low() {
        low = true;
        return this;
    }

    /** Of switches and gateways it is this severe until somebody sets a severity. */
    RuleWriting carrying(Severity lost, Severity passing) {
        carrying = Optional.of(new Rule.Carrying(lost, passing));
        return this;
    }

    /** Thresholds from warning to critical; null leaves one out until somebody sets it. */
    RuleWriting levels(String warning, String minor, String major, String critical) {
        return with(RuleField.WARNING, orOff(warning))
                .with(RuleField.MINOR, orOff(minor))
                .with(RuleField.MAJOR, orOff(major))
                .with(RuleField.CRITICAL, orOff(critical));
    }

    private static String orOff(String text) {
        return text == null ? RuleField.OFF : text;
    }

    RuleWriting clear(String text) {
        return with(RuleField.CLEAR, text);
    }

    RuleWriting held(int raiseSeconds, int clearSeconds) {
        return with(RuleField.RAISE_AFTER, String.valueOf(raiseSeconds))
                .with(RuleField.CLEAR_AFTER, String.valueOf(clearSeconds));
    }

    Rule because(String reads, String why, String source) {
        return new Rule(type, kind, low, unit, fields, carrying, reads, why, source);
    }
}
