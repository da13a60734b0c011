package org.roundsman.triage.watch;

import java.util.Optional;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.Severity;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.rules.RuleField;
import org.roundsman.rules.RuleSet;
import org.roundsman.rules.RuleTarget;
import org.roundsman.rules.RuleValues;

/** How severe the alarms are that the watch raises, by the rules. A switch or gateway takes others down with it. */
record Severities(RuleSet rules) {

    /** Empty when the rule is switched off there. */
    Optional<Severity> of(AlarmType type, RuleTarget target) {
        RuleValues values = rules.of(type, target);
        return values.enabled() ? Optional.of(values.severity()) : Optional.empty();
    }

    /** Of a silent device: for what others hang on, critical unless somebody said otherwise. */
    Optional<Severity> silent(RuleTarget target, DeviceKind kind) {
        Optional<Severity> said = of(AlarmType.DEVICE_SILENT, target);
        boolean shipped = rules.origins(AlarmType.DEVICE_SILENT, target)
                .getOrDefault(RuleField.SEVERITY, Optional.empty())
                .isEmpty();
        return said.map(severity -> shipped && kind != DeviceKind.ACCESS_POINT ? Severity.CRITICAL : severity);
    }
}
