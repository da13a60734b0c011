package org.roundsman.rules.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.DeskFixture;
import org.roundsman.rules.RuleField;
import org.roundsman.rules.RuleLevel;
import org.roundsman.rules.RuleOverride;
import org.roundsman.rules.RuleTarget;
import org.roundsman.rules.RuleTargets.Found;
import org.roundsman.rules.fold.Memory;
import org.roundsman.rules.store.OverrideTable.Target;
import org.roundsman.rules.store.OverrideTable.Writing;

class RuleTablesDbTest {

    private static final Instant AT = Instant.parse("2026-11-25T12:00:00Z");
    private static final AlarmType BUSY = AlarmType.UTILISATION_HIGH;

    private final DeskFixture desk = new DeskFixture("rule_tables");
    private final OverrideTable overrides = new OverrideTable(desk.database);
    private final TargetTable targets = new TargetTable(desk.database);
    private final long accessPoint = desk.accessPoint("ap-1");
    private final long model = desk.fleet.id(
            "insert into model (maker, name, kind) values ('Tamarack Radio', 'TR-22', 'ACCESS_POINT') returning id");

    private static Writing writing(String major) {
        return new Writing(Map.of(RuleField.MAJOR, major), "why", "wren", AT);
    }

    @Test
    void valuesOfEveryLevelAreKeptOncePerPlaceAndGoWithIt() {
        Map<RuleLevel, Long> places = Map.of(
                RuleLevel.ALL,
                0L,
                RuleLevel.MODEL,
                model,
                RuleLevel.CUSTOMER,
                desk.customer,
                RuleLevel.SITE,
                desk.site,
                RuleLevel.DEVICE,
                accessPoint);
        places.forEach((level, id) -> {
            Target target = overrides.target(level, id).orElseThrow();
            assertThat(overrides.add(BUSY, target, writing("90"))).isTrue();
            assertThat(overrides.add(BUSY, target, writing("91")))
                    .as("a second time")
                    .isFalse();
            RuleOverride kept = overrides.find(BUSY, level, id).orElseThrow();
            assertThat(kept.fields()).isEqualTo(Map.of(RuleField.MAJOR, "90"));
            assertThat(kept.targetName()).isEqualTo(target.name());
            assertThat(kept.customerId())
                    .isEqualTo(level == RuleLevel.ALL || level == RuleLevel.MODEL ? 0 : desk.customer);
        });
        assertThat(overrides.all()).hasSize(5);
        assertThat(overrides.target(RuleLevel.SITE, 999_999)).isEmpty();
        RuleOverride site = overrides.find(BUSY, RuleLevel.SITE, desk.site).orElseThrow();
        assertThat(overrides.change(site.id(), 2, writing("95"))).isFalse();
        assertThat(overrides.change(site.id(), 1, writing("95"))).isTrue();
        assertThat(overrides.remove(site.id(), 1)).isFalse();
        assertThat(overrides.find(site.id()).orElseThrow().version()).isEqualTo(2);
        desk.fleet.run("delete from device where id = ?", accessPoint);
        assertThat(overrides.all()).hasSize(4);
    }

    @Test
    void placesAreFoundByTheirNamesWithinTheScope() {
        assertThat(targets.search("tr-22 tamarack", null, 9))
                .containsExactly(new Found(RuleLevel.MODEL, model, "Tamarack Radio TR-22"));
        List<Found> all = targets.search("pebble", null, 9);
        assertThat(all).extracting(Found::level).containsExactly(RuleLevel.CUSTOMER, RuleLevel.SITE, RuleLevel.DEVICE);
        assertThat(targets.search("pebble", desk.customer, 9)).isEqualTo(all);
        assertThat(targets.search("pebble", desk.customer + 1, 9)).isEmpty();
        assertThat(targets.search("", desk.customer, 2)).hasSize(2);
        assertThat(targets.find(RuleLevel.SITE, desk.site, null)).contains(all.get(1));
        assertThat(targets.find(RuleLevel.SITE, desk.site, desk.customer + 1)).isEmpty();
        assertThat(targets.device(accessPoint)).contains(new RuleTarget(desk.customer, desk.site, 0, accessPoint));
        assertThat(targets.customerOfSite(desk.site)).contains(desk.customer);
    }

    @Test
    void whatIsRememberedComesBackAndOfDevicesThatAreGoneNothingIsKept() {
        MemoryTable memories = new MemoryTable(desk.database);
        Memory some = new Memory(1000, Map.of(1, 7, 2, 3), "A1");
        memories.save(Map.of(accessPoint, some, 999_999L, some));
        memories.save(Map.of(accessPoint, new Memory(Double.NaN, Map.of(1, 7), "B\u00002")));
        assertThat(memories.all()).containsOnlyKeys(accessPoint);
        Memory back = memories.all().get(accessPoint);
        assertThat(back.fastest()).isNaN();
        assertThat(back.radios()).isEqualTo(Map.of(1, 7));
        assertThat(back.serial()).isEqualTo("B\\x002");
    }
}
