package org.roundsman.web.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.roundsman.alarms.AlarmType;
import org.roundsman.rules.Rule;
import org.roundsman.rules.RuleField;
import org.roundsman.rules.ShippedRules;

/** Words of our own for values of rules. */
class RuleWordsTest {

    private static final Rule SILENT = ShippedRules.of(AlarmType.DEVICE_SILENT);

    @Test
    void ofSilenceAllShippedSeveritiesAreSaid() {
        assertThat(RuleWords.shipped(SILENT))
                .isEqualTo("in use; major, critical for switches and gateways,"
                        + " minor where only their management is lost");
    }

    @Test
    void aSeverityThatSomebodySetHoldsForAll() {
        assertThat(RuleWords.of(SILENT, Map.of(RuleField.SEVERITY, "major"))).isEqualTo("major");
        assertThat(RuleWords.of(SILENT, Map.of(RuleField.ENABLED, "no"), true)).isEqualTo("switched off");
    }

    @Test
    void otherRulesHaveOneSeverityForWhateverIsConcerned() {
        assertThat(RuleWords.shipped(ShippedRules.of(AlarmType.CREDENTIALS_REFUSED)))
                .isEqualTo("in use; minor");
    }
}
