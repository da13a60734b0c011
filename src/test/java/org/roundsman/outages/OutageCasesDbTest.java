package org.roundsman.outages;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.alarms.AlarmChange;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.CauseKind;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.alarms.Resource;
import org.roundsman.alarms.Severity;
import org.roundsman.demo.Fault;
import org.roundsman.fleet.CustomerScope;

/**
 * Each outage that the invented fleet can have, from the agents to the alarms: one cause with its evidence within three
 * intervals and five seconds of the fault, by the times that were stored; all clear again by itself.
 */
class OutageCasesDbTest {

    private static final Duration BOUND = Town.INTERVAL.multipliedBy(3).plusSeconds(5);
    private static final Duration LONG_ENOUGH = Duration.ofMinutes(5);
    private static final String ACCESS_POINT = "garden-ap-03";
    private static final String SECOND_SWITCH = "garden-switch-2";

    private Town town;

    @BeforeEach
    void begin() {
        town = new Town("outage_cases", 26_191);
        assertThat(town.book.active()).isEmpty();
    }

    @AfterEach
    void end() {
        town.close();
    }

    private AlarmKey silence(String device) {
        return AlarmKey.of(AlarmType.DEVICE_SILENT, Resource.device(town.id(device)));
    }

    private AlarmKey of(AlarmType type, String device) {
        return AlarmKey.of(type, Resource.device(town.id(device)));
    }

    /** Switches a fault on and waits; the one alarm that nothing explains, which must be that one. */
    private OpenAlarm causeOf(Fault fault, String device, AlarmKey expected) {
        Instant began = town.now();
        town.faults.switchOn(fault, town.device(device));
        town.run(LONG_ENOUGH);
        return onlyCause(expected, began);
    }

    private OpenAlarm onlyCause(AlarmKey expected, Instant fault) {
        assertThat(town.causes())
                .as("all: " + town.book.active().values())
                .singleElement()
                .satisfies(alarm -> {
                    assertThat(alarm.key()).isEqualTo(expected);
                    assertThat(alarm.settled()).as("settled: " + alarm).isTrue();
                    assertThat(Duration.between(fault, alarm.raised())).isLessThanOrEqualTo(BOUND);
                    assertThat(alarm.began()).isBetween(fault, fault.plus(Town.INTERVAL));
                });
        return town.causes().get(0);
    }

    /** Switches it off; all alarms of silence clear within the time that a start and two rounds take, and say so. */
    private void clears(Fault fault, String device, OpenAlarm cause) {
        town.faults.switchOff(fault, town.device(device));
        Instant end = town.now().plus(Duration.ofMinutes(5));
        while (town.now().isBefore(end)) {
            town.run(Duration.ofSeconds(1));
            assertThat(town.causes())
                    .as("silences that nothing explains while they come back, at " + town.now())
                    .filteredOn(alarm -> alarm.key().type() == AlarmType.DEVICE_SILENT)
                    .hasSizeLessThanOrEqualTo(1);
        }
        cleared(cause);
    }

    private void cleared(OpenAlarm cause) {
        assertThat(town.causes()).isEmpty();
        assertThat(town.book.active().keySet()).noneMatch(key -> key.type() == AlarmType.DEVICE_SILENT);
        OpenAlarm over = town.book.find(CustomerScope.everyone(), cause.id()).orElseThrow();
        assertThat(over.clearedAt()).isPresent();
        AlarmChange last =
                town.book.changes(CustomerScope.everyone(), cause.id()).get(0);
        assertThat(last.severity()).isEmpty();
        boolean silence = cause.key().type() != AlarmType.CREDENTIALS_REFUSED;
        assertThat(last.text()).containsPattern(silence ? "\\d+ (min|s)" : "accepted again");
    }

    @Test
    void aLostLineIsOneAlarmOfTheSite() {
        AlarmKey site = AlarmKey.of(AlarmType.UPLINK_LOST, Resource.site(town.siteId(Town.SCHOOL)));
        Instant began = town.now();
        town.faults.switchOn(Fault.UPLINK_LOST, town.site(Town.SCHOOL));
        town.run(LONG_ENOUGH);
        OpenAlarm cause = onlyCause(site, began);
        assertThat(cause.cause()).isEqualTo(CauseKind.UPLINK_LOST);
        assertThat(cause.pointing()).isEqualTo(town.site(Town.SCHOOL).devices().size());
        assertThat(cause.evidence()).anyMatch(s -> s.contains("18 of 18 access points silent"));
        town.faults.switchOff(Fault.UPLINK_LOST, town.site(Town.SCHOOL));
        town.run(Duration.ofMinutes(3));
        cleared(cause);
        assertThat(town.book.active()).isEmpty();
    }

    @Test
    void aGatewayWhoseManagementIsLostIsAloneInItsTrouble() {
        OpenAlarm cause = causeOf(Fault.AGENT_SILENT, "garden-gateway", silence("garden-gateway"));
        assertThat(cause.cause()).isEqualTo(CauseKind.MANAGEMENT_LOST);
        assertThat(cause.severity()).isEqualTo(Severity.MINOR);
        assertThat(cause.evidence()).anyMatch(s -> s.contains("it passes traffic on"));
        clears(Fault.AGENT_SILENT, "garden-gateway", cause);
    }

    @Test
    void aSwitchThatHangsExplainsWhatIsBehindIt() {
        OpenAlarm cause = causeOf(Fault.HUNG, SECOND_SWITCH, silence(SECOND_SWITCH));
        assertThat(cause.cause()).isEqualTo(CauseKind.SWITCH_LOST);
        assertThat(cause.pointing()).isEqualTo(4);
        assertThat(cause.evidence()).anyMatch(s -> s.contains("has link"));
        clears(Fault.HUNG, SECOND_SWITCH, cause);
        assertThat(town.book.active()).isEmpty();
    }

    @Test
    void aSwitchWithoutPowerIsToldFromOneThatHangsAndItsAccessPointsRestartWithIt() {
        OpenAlarm cause = causeOf(Fault.PORT_DEAD, SECOND_SWITCH, silence(SECOND_SWITCH));
        assertThat(cause.cause()).isEqualTo(CauseKind.SWITCH_POWER);
        assertThat(cause.pointing()).isEqualTo(4);
        assertThat(cause.evidence()).anyMatch(s -> s.contains("has no link"));
        clears(Fault.PORT_DEAD, SECOND_SWITCH, cause);
        assertThat(town.book.active().keySet()).isNotEmpty().allMatch(key -> key.type() == AlarmType.DEVICE_RESTARTED);
        assertThat(town.book.active().values())
                .allSatisfy(alarm -> assertThat(alarm.causedBy()).isPresent());
    }

    @Test
    void aPortWhosePowerSomebodySwitchedOffIsNamed() {
        OpenAlarm cause = causeOf(Fault.POWER_OFF, ACCESS_POINT, silence(ACCESS_POINT));
        assertThat(cause.cause()).isEqualTo(CauseKind.PORT_NOT_DELIVERING);
        assertThat(cause.evidence()).anyMatch(s -> s.contains("garden-switch-1"));
        clears(Fault.POWER_OFF, ACCESS_POINT, cause);
    }

    /** Some of these ports report a fault, the others offer power that nothing draws. */
    @Test
    void aPortThatDeliversNoPowerIsNamed() {
        for (String device : List.of("garden-ap-05", "garden-ap-06")) {
            OpenAlarm cause = causeOf(Fault.PORT_DEAD, device, silence(device));
            boolean offers = cause.evidence().stream().anyMatch(s -> s.contains("offers power, but nothing draws it"));
            assertThat(cause.cause())
                    .as(cause.evidence().toString())
                    .isEqualTo(offers ? CauseKind.NO_POWER_DRAWN : CauseKind.PORT_NOT_DELIVERING);
            clears(Fault.PORT_DEAD, device, cause);
        }
    }

    @Test
    void aBrokenCableIsALinkThatIsDown() {
        OpenAlarm cause = causeOf(Fault.LINK_DOWN, ACCESS_POINT, silence(ACCESS_POINT));
        assertThat(cause.cause()).isEqualTo(CauseKind.LINK_DOWN);
        clears(Fault.LINK_DOWN, ACCESS_POINT, cause);
        assertThat(town.book.active()).isEmpty();
    }

    @Test
    void anAccessPointThatHangsHasLinkAndPower() {
        OpenAlarm cause = causeOf(Fault.HUNG, ACCESS_POINT, silence(ACCESS_POINT));
        assertThat(cause.cause()).isEqualTo(CauseKind.DEVICE_LOST);
        assertThat(cause.evidence()).anyMatch(s -> s.contains("has link"));
        clears(Fault.HUNG, ACCESS_POINT, cause);
        assertThat(town.book.active()).isEmpty();
    }

    @Test
    void refusedCredentialsAreNoSilence() {
        AlarmKey refused = of(AlarmType.CREDENTIALS_REFUSED, "market-row-ap-02");
        OpenAlarm cause = causeOf(Fault.CREDENTIAL_WRONG, "market-row-ap-02", refused);
        assertThat(cause.cause()).isEqualTo(CauseKind.CREDENTIALS_REFUSED);
        clears(Fault.CREDENTIAL_WRONG, "market-row-ap-02", cause);
    }

    @Test
    void allSitesAtOnceIsOurOwnBlindnessAndADeviceThatWasSilentBeforeDoesNotComeAndGoByIt() {
        town.faults.switchOn(Fault.AGENT_SILENT, town.device("garden-gateway"));
        town.run(LONG_ENOUGH);
        town.faults.switchOff(Fault.AGENT_SILENT, town.device("garden-gateway"));
        town.run(Duration.ofMinutes(3));
        assertThat(town.book.active()).isEmpty();
        Instant began = town.now();
        town.sites().forEach(site -> town.faults.switchOn(Fault.UPLINK_LOST, site));
        town.run(LONG_ENOUGH);
        OpenAlarm cause = onlyCause(AlarmKey.of(AlarmType.VIEW_LOST, Resource.service()), began);
        assertThat(cause.cause()).isEqualTo(CauseKind.VIEW_LOST);
        town.sites().forEach(site -> town.faults.switchOff(Fault.UPLINK_LOST, site));
        town.run(Duration.ofMinutes(3));
        assertThat(town.book.active()).isEmpty();
    }

    @Test
    void aRestartOfTheServiceInMidOutageNeitherRepeatsNorLosesAnything() {
        town.faults.switchOn(Fault.HUNG, town.device(SECOND_SWITCH));
        town.run(Duration.ofSeconds(100));
        town.restartService();
        town.run(Duration.ofMinutes(4));
        OpenAlarm cause = town.alarm(silence(SECOND_SWITCH)).orElseThrow();
        long changes = town.rows.ids("select count(*) from alarm_change").get(0);
        assertThat(changes).isEqualTo(5);
        town.restartService();
        town.run(Duration.ofMinutes(2));
        assertThat(town.rows.ids("select count(*) from alarm_change")).containsExactly(changes);
        assertThat(town.alarm(silence(SECOND_SWITCH)).orElseThrow().episodeId()).isEqualTo(cause.episodeId());
        town.faults.switchOff(Fault.HUNG, town.device(SECOND_SWITCH));
        town.restartService();
        town.run(Duration.ofMinutes(3));
        cleared(cause);
        assertThat(town.rows.ids("select count(*) from alarm_change")).containsExactly(2 * changes);
    }
}
