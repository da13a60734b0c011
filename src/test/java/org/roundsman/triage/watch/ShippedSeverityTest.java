package org.roundsman.triage.watch;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.Severity;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.rules.Rule;
import org.roundsman.rules.RuleSet;
import org.roundsman.rules.RuleTarget;
import org.roundsman.rules.ShippedRules;

/** What the pages of rules say of a silent device is what the watch raises. */
class ShippedSeverityTest {

    @ParameterizedTest
    @EnumSource(DeviceKind.class)
    void silenceIsRaisedAsItsRuleSays(DeviceKind kind) {
        Rule rule = ShippedRules.of(AlarmType.DEVICE_SILENT);
        Severity own = rule.shipped().severity();
        Severity said = kind == DeviceKind.ACCESS_POINT
                ? own
                : rule.carrying().map(Rule.Carrying::lost).orElse(own);
        assertThat(new Severities(RuleSet.shipped()).silent(RuleTarget.service(), kind))
                .contains(said);
    }

    @Test
    void lostManagementIsRaisedAsTheRuleOfSilenceSays() {
        Rule rule = ShippedRules.of(AlarmType.DEVICE_SILENT);
        assertThat(new Severities(RuleSet.shipped()).managementLost(RuleTarget.service()))
                .isEqualTo(rule.carrying().map(Rule.Carrying::passing))
                .isPresent();
    }
}
