package org.roundsman.firmware.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.DeskFixture;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.alarms.Severity;
import org.roundsman.firmware.FirmwareHouse;
import org.roundsman.rules.RuleField;
import org.roundsman.rules.RuleLevel;
import org.roundsman.rules.RuleOverride;
import org.roundsman.rules.RuleSet;

class SiteAlarmsDbTest {

    private FirmwareHouse town;
    private long site;
    private SiteAlarms alarms;
    private long first;
    private long second;

    @BeforeEach
    void aSite() {
        town = new FirmwareHouse("firmware_alarms");
        site = town.house.site;
        first = town.accessPoint(site, "ap-1", "6.1.0");
        second = town.accessPoint(site, "ap-2", "6.1.0");
        town.accessPoint(site, "ap-3", "6.4.2");
        town.house.fleet.device(site, "switch-1", "NETWORK_SWITCH");
        alarms = watch();
    }

    private SiteAlarms watch() {
        return new SiteAlarms(town.states, town.house.book, town.house.desk, () -> town.rules);
    }

    private void look() {
        alarms.look(town.house.clock.instant());
    }

    /** How many alarms cleared with these words. */
    private long said(String words) {
        return town.house.fleet.id("select count(*) from alarm_episode where summary = ?", words);
    }

    private OpenAlarm only() {
        List<OpenAlarm> found = town.alarms();
        assertThat(found).hasSize(1);
        return found.get(0);
    }

    @Test
    void aSiteWithWithdrawnFirmwareHasOneAlarmWithItsCounts() {
        look();
        assertThat(only().text())
                .isEqualTo("2 of 3 access points run firmware that should not run: 6.1.0 was withdrawn on 2026-10-01:"
                        + " it restarts under load.");
        assertThat(only().severity()).isEqualTo(Severity.WARNING);
        assertThat(only().siteId()).hasValue(site);
    }

    @Test
    void aReasonThatEndsWithAFullStopGetsNoSecondOne() {
        town.house.fleet.run("update firmware_release set reason = 'It restarts.' where stand = 'WITHDRAWN'");
        look();
        assertThat(only().text()).endsWith("2026-10-01: It restarts.");
    }

    @Test
    void nothingIsToldTwiceNotEvenAfterARestart() {
        look();
        int told = town.house.told.size();
        look();
        alarms = watch();
        look();
        assertThat(town.house.told).hasSize(told);
        assertThat(only().id()).isPositive();
    }

    @Test
    void theTextFollowsAndTheLastOneClearsIt() {
        look();
        long id = only().id();
        town.runs(first, "6.4.2");
        // a text is brought up to date at most now and then
        town.house.clock.set(DeskFixture.NOON.plusSeconds(600));
        look();
        assertThat(only().text()).startsWith("1 of 3 access points runs firmware that should not run");
        assertThat(only().id()).isEqualTo(id);
        town.runs(second, "6.0.0");
        look();
        assertThat(town.alarms()).isEmpty();
    }

    @Test
    void severalReasonsAreCounted() {
        town.house.fleet.run(
                "insert into firmware_minimum (line_id, version, identifier) values (?, '6.0.5', 'TR-ADV-7')",
                town.line);
        town.runs(second, "6.0.0");
        look();
        assertThat(only().text())
                .contains("1 because 6.0.0 is older than 6.0.5, the minimum for TR-ADV-7")
                .contains("1 because 6.1.0 was withdrawn");
    }

    @Test
    void itClearsWhenThePolicyIsGone() {
        look();
        town.house.fleet.run("delete from firmware_release where stand = 'WITHDRAWN'");
        look();
        assertThat(town.alarms()).isEmpty();
        assertThat(said("No device of the site counts as running withdrawn firmware any more."))
                .isEqualTo(1);
    }

    @Test
    void itClearsWhenAnExceptionHoldsAndComesBackWhenThatEnds() {
        town.house.fleet.run(
                "insert into firmware_exception (line_id, customer_id, reason, last_day, made_by, made_at)"
                        + " values (?, ?, 'a till', date '2026-11-25', 'wren', now())",
                town.line,
                town.house.customer);
        look();
        assertThat(town.alarms()).isEmpty();
        town.house.clock.set(java.time.Instant.parse("2026-11-26T00:00:01Z"));
        look();
        assertThat(town.alarms()).hasSize(1);
    }

    @Test
    void itClearsWhenTheRuleIsSwitchedOffThere() {
        look();
        Map<RuleField, String> off = new EnumMap<>(RuleField.class);
        off.put(RuleField.ENABLED, "no");
        town.rules = new RuleSet(List.of(new RuleOverride(
                1,
                AlarmType.FIRMWARE_WITHDRAWN,
                RuleLevel.SITE,
                site,
                "Mill Lane",
                town.house.customer,
                off,
                "",
                1,
                "wren",
                DeskFixture.NOON)));
        look();
        assertThat(town.alarms()).isEmpty();
        assertThat(said("The rule about withdrawn firmware is switched off for this site."))
                .isEqualTo(1);
        town.rules = RuleSet.shipped();
        look();
        assertThat(town.alarms()).hasSize(1);
    }

    @Test
    void itClearsWhenTheDevicesOrTheSiteAreGone() {
        look();
        town.house.fleet.run("delete from device where site_id = ?", site);
        look();
        assertThat(town.alarms()).isEmpty();
    }
}
