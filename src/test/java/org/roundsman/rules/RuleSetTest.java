package org.roundsman.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.Severity;

class RuleSetTest {

    private static final AlarmType BUSY = AlarmType.UTILISATION_HIGH;
    private static final RuleTarget DEVICE = new RuleTarget(1, 2, 3, 4);

    private static RuleOverride major(RuleLevel level, long target, String at) {
        return RulesFixture.override(BUSY, level, target, Map.of(RuleField.MAJOR, at));
    }

    private static double major(RuleTarget target, RuleOverride... overrides) {
        return new RuleSet(List.of(overrides))
                .of(BUSY, target)
                .level(Severity.MAJOR)
                .getAsDouble();
    }

    @Test
    void everyTypeOfAlarmHasARuleThatExplainsItself() {
        for (AlarmType type : AlarmType.values()) {
            Rule rule = ShippedRules.of(type);
            assertThat(List.of(rule.reads(), rule.why(), rule.source()))
                    .allSatisfy(text -> assertThat(text).as(type.id()).endsWith("."));
            RuleTexts texts = RuleTexts.read(rule, rule.fields());
            texts.checkTogether(Map.of());
            assertThat(texts.faults()).as(type.id()).isEmpty();
            assertThat(texts.good()).isEqualTo(rule.fields());
            assertThat(rule.shipped().enabled()).isTrue();
        }
        assertThat(ShippedRules.all()).hasSize(AlarmType.values().length);
    }

    /** The values that the order asked for: common practice, no source. */
    @Test
    void channelUtilisationIsShippedAsAgreed() {
        RuleValues values = RuleSet.shipped().of(BUSY, DEVICE);
        assertThat(values.levels())
                .isEqualTo(Map.of(Severity.WARNING, 50.0, Severity.MINOR, 70.0, Severity.MAJOR, 85.0));
        assertThat(values.raiseAfter()).isEqualTo(Duration.ofMinutes(15));
    }

    @Test
    void theMostSpecificPlaceWins() {
        RuleOverride all = major(RuleLevel.ALL, 0, "86");
        RuleOverride model = major(RuleLevel.MODEL, 3, "87");
        RuleOverride customer = major(RuleLevel.CUSTOMER, 1, "88");
        RuleOverride site = major(RuleLevel.SITE, 2, "89");
        RuleOverride device = major(RuleLevel.DEVICE, 4, "90");
        assertThat(major(DEVICE)).isEqualTo(85);
        assertThat(major(DEVICE, all)).isEqualTo(86);
        assertThat(major(DEVICE, model, all)).isEqualTo(87);
        assertThat(major(DEVICE, customer, model, all)).isEqualTo(88);
        assertThat(major(DEVICE, site, all, customer, model)).isEqualTo(89);
        assertThat(major(DEVICE, device, site, customer, model, all)).isEqualTo(90);
        assertThat(major(new RuleTarget(9, 9, 9, 9), device, site, customer, model, all))
                .isEqualTo(86);
        assertThat(major(new RuleTarget(1, 9, 0, 9), device, site, customer, model, all))
                .as("another site of the customer")
                .isEqualTo(88);
    }

    @Test
    void valuesLieOverEachOtherFieldByField() {
        RuleSet rules = new RuleSet(List.of(
                RulesFixture.override(BUSY, RuleLevel.SITE, 2, Map.of(RuleField.RAISE_AFTER, "1800")),
                RulesFixture.override(
                        BUSY, RuleLevel.CUSTOMER, 1, Map.of(RuleField.WARNING, "off", RuleField.RAISE_AFTER, "60"))));
        RuleValues values = rules.of(BUSY, DEVICE);
        assertThat(values.raiseAfter()).isEqualTo(Duration.ofMinutes(30));
        assertThat(values.lowest()).contains(Severity.MINOR);
        Map<RuleField, Optional<RuleOverride>> origins = rules.origins(BUSY, DEVICE);
        assertThat(origins.get(RuleField.RAISE_AFTER).get().level()).isEqualTo(RuleLevel.SITE);
        assertThat(origins.get(RuleField.WARNING).get().level()).isEqualTo(RuleLevel.CUSTOMER);
        assertThat(origins.get(RuleField.MAJOR)).isEmpty();
        assertThat(rules.memory()).isEqualTo(Duration.ofHours(1));
    }

    @Test
    void theFourTypesOfTheTopologyHaveASwitchAndASeverity() {
        for (AlarmType type : List.of(
                AlarmType.DEVICE_SILENT, AlarmType.CREDENTIALS_REFUSED, AlarmType.UPLINK_LOST, AlarmType.VIEW_LOST)) {
            assertThat(ShippedRules.of(type).settable())
                    .containsExactlyInAnyOrder(RuleField.ENABLED, RuleField.SEVERITY);
        }
        RuleSet rules = new RuleSet(List.of(RulesFixture.override(
                AlarmType.DEVICE_SILENT, RuleLevel.SITE, 2, Map.of(RuleField.SEVERITY, "critical"))));
        assertThat(rules.of(AlarmType.DEVICE_SILENT, DEVICE).severity()).isEqualTo(Severity.CRITICAL);
        assertThat(rules.of(AlarmType.DEVICE_SILENT, RuleTarget.service()).severity())
                .isEqualTo(Severity.MAJOR);
    }

    @Test
    void whatDoesNotGoTogetherIsRefused() {
        Rule busy = ShippedRules.of(BUSY);
        assertThat(faults(busy, Map.of(RuleField.CLEAR, "60"))).containsOnlyKeys("clear");
        assertThat(faults(busy, Map.of(RuleField.MINOR, "90"))).containsOnlyKeys("major");
        assertThat(faults(busy, Map.of(RuleField.MAJOR, "much"))).containsOnlyKeys("major");
        assertThat(faults(busy, Map.of(RuleField.MAJOR, "NaN"))).containsOnlyKeys("major");
        assertThat(faults(busy, Map.of(RuleField.RAISE_AFTER, "21601"))).containsOnlyKeys("raiseAfter");
        assertThat(faults(busy, Map.of(RuleField.WORDS, "setup"))).containsOnlyKeys("words");
        assertThat(faults(busy, Map.of(RuleField.WARNING, "off", RuleField.MINOR, "off", RuleField.MAJOR, "off")))
                .containsOnlyKeys("enabled");
        Rule port = ShippedRules.of(AlarmType.PORT_SLOW);
        assertThat(faults(port, Map.of(RuleField.CLEAR, "5"))).as("low is bad").containsOnlyKeys("clear");
        assertThat(faults(port, Map.of(RuleField.WARNING, "5"))).containsOnlyKeys("minor");
    }

    private static Map<String, String> faults(Rule rule, Map<RuleField, String> entered) {
        RuleTexts texts = RuleTexts.read(rule, entered);
        texts.checkTogether(rule.fields());
        return texts.faults();
    }

    @Test
    void keysAreUniqueAndFound() {
        assertThat(Arrays.stream(RuleField.values()).map(RuleField::key)).doesNotHaveDuplicates();
        for (RuleField field : RuleField.values()) {
            assertThat(RuleField.byKey(field.key())).contains(field);
        }
    }
}
