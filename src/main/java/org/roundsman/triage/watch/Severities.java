package org.roundsman.triage.watch;

import java.util.Optional;
import java.util.function.UnaryOperator;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.Severity;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.rules.RuleField;
import org.roundsman.rules.RuleSet;
import org.roundsman.rules.RuleTarget;
import org.roundsman.rules.RuleValues;

/**
 * How severe the alarms are that the watch raises, by the rules. A switch or gateway takes others down with it, unless it is its
 * management alone that is lost.
 */
record Severities(RuleSet rules) {

    /** Empty when the rule is switched off there. */
    Optional<Severity> of(AlarmType type, RuleTarget target) {
        RuleValues values = rules.of(type, target);
        return values.enabled() ? Optional.of(values.severity()) : Optional.empty();
    }

    /** The least that a rule with levels raises; empty when it raises nothing there. */
    Optional<Severity> mildest(AlarmType type, RuleTarget target) {
        RuleValues values = rules.of(type, target);
        return values.enabled() ? values.lowest() : Optional.empty();
    }

    /** Of a silent device: for what others hang on, critical unless somebody said otherwise. */
    Optional<Severity> silent(RuleTarget target, DeviceKind kind) {
        return silent(target, shipped -> kind == DeviceKind.ACCESS_POINT ? shipped : Severity.CRITICAL);
    }

    /** Of a device that is silent but passes traffic on: minor at most unless somebody said otherwise, since only we suffer. */
    Optional<Severity> managementLost(RuleTarget target) {
        return silent(target, shipped -> shipped.atLeast(Severity.MINOR) ? Severity.MINOR : shipped);
    }

    private Optional<Severity> silent(RuleTarget target, UnaryOperator<Severity> instead) {
        Optional<Severity> said = of(AlarmType.DEVICE_SILENT, target);
        boolean shipped = rules.origins(AlarmType.DEVICE_SILENT, target)
                .getOrDefault(RuleField.SEVERITY, Optional.empty())
                .isEmpty();
        return said.map(severity -> shipped ? instead.apply(severity) : severity);
    }
}
