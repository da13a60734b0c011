package org.roundsman.outages;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.CauseKind;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.alarms.Resource;
import org.roundsman.alarms.Severity;
import org.roundsman.demo.Fault;

/** Faults that leave a device answering, from the agents to the alarms, with the rules as they are shipped. */
class QualityCasesDbTest {

    /** The longest that a rule wants to see something before it tells: half an hour, for a set-up network. */
    private static final Duration LONG_ENOUGH = Duration.ofMinutes(33);

    /** Changed facts are found some minutes later, and an hour is counted from then on. */
    private static final Duration CALM_HOUR = Duration.ofMinutes(85);

    private Town town;

    @BeforeEach
    void begin() {
        town = new Town("quality_cases", 26_192);
    }

    @AfterEach
    void end() {
        town.close();
    }

    private AlarmKey of(AlarmType type, String device) {
        return AlarmKey.of(type, Resource.device(town.id(device)));
    }

    private AlarmKey radio(AlarmType type, String device, int radio) {
        return AlarmKey.of(type, Resource.radio(town.id(device), radio));
    }

    private void on(Fault fault, String device) {
        town.faults.switchOn(fault, town.device(device));
    }

    /** By type and resource, so that a difference can be read. */
    private Map<String, Severity> active() {
        return town.book.active().values().stream()
                .collect(Collectors.toMap(
                        alarm -> words(alarm.key(), alarm.resourceName()),
                        OpenAlarm::severity,
                        Severity::worst,
                        TreeMap::new));
    }

    private static String words(AlarmKey key, String name) {
        return key.type() + " " + name;
    }

    private void troubles() {
        on(Fault.ROOM_SATURATED, "garden-ap-03");
        on(Fault.CHANNEL_BUSY, "riverside-ap-01");
        on(Fault.CHANNEL_HALF, "riverside-ap-02");
        on(Fault.CLIENTS_MANY, "market-row-ap-01");
        on(Fault.CPU_BUSY, "garden-ap-07");
        on(Fault.MEMORY_SHORT, "garden-ap-08");
        on(Fault.RADIO_OFF, "garden-ap-02");
        on(Fault.RESTARTED, "garden-ap-01");
        on(Fault.SETUP_NETWORK, "garden-ap-10");
        on(Fault.PORT_SLOW, "garden-ap-13");
        on(Fault.CLOCK_1970, "garden-ap-14");
        on(Fault.FIRMWARE_UPDATED, "garden-ap-12");
    }

    @Test
    void eachIsToldWithItsSeverityAndClearsAgain() {
        troubles();
        town.run(LONG_ENOUGH);
        Map<String, Severity> told = active();
        assertThat(told)
                .containsEntry("UTILISATION_HIGH garden-ap-03, radio 2", Severity.MAJOR)
                .containsEntry("UTILISATION_HIGH riverside-ap-01, radio 2", Severity.MINOR)
                .containsEntry("UTILISATION_HIGH riverside-ap-02, radio 2", Severity.WARNING)
                .containsEntry("CLIENTS_HIGH market-row-ap-01, radio 2", Severity.MINOR)
                .containsEntry("CPU_HIGH garden-ap-07", Severity.MINOR)
                .containsEntry("MEMORY_HIGH garden-ap-08", Severity.MINOR)
                .containsEntry("RADIO_OFF garden-ap-02, radio 1", Severity.MINOR)
                .containsEntry("DEVICE_RESTARTED garden-ap-01", Severity.WARNING)
                .containsEntry("SETUP_NETWORK_OPEN garden-ap-10", Severity.MINOR)
                .containsEntry("CONFIGURATION_CHANGED garden-ap-12", Severity.WARNING)
                .containsEntry("PORT_SLOW garden-ap-13", Severity.MINOR)
                .containsEntry("CLOCK_OFF garden-ap-14", Severity.MINOR);
        assertThat(told.keySet()).noneMatch(words -> words.startsWith("DEVICE_SILENT"));
        assertThat(town.alarm(radio(AlarmType.RADIO_OFF, "garden-ap-02", 1))
                        .orElseThrow()
                        .cause())
                .isEqualTo(CauseKind.RADIO_OFF);
        assertThat(town.alarm(of(AlarmType.DEVICE_RESTARTED, "garden-ap-01"))
                        .orElseThrow()
                        .cause())
                .isEqualTo(CauseKind.RESTARTED);
        for (Fault fault : Fault.values()) {
            town.sites().forEach(site -> town.faults.switchOff(fault, site));
        }
        town.run(CALM_HOUR);
        assertThat(active().keySet()).allMatch(words -> words.startsWith("CONFIGURATION_CHANGED"));
        // that a network is gone is known after two hourly readings, and stands for an hour
        for (int hour = 0; hour < 3 && !active().isEmpty(); hour++) {
            town.run(CALM_HOUR);
        }
        assertThat(active()).isEmpty();
    }

    @Test
    void anAccessPointThatComesAndGoesIsOneAlarmAfterItsSecondTime() {
        on(Fault.FLAPPING, "garden-ap-03");
        town.run(Duration.ofMinutes(32));
        OpenAlarm alarm = town.alarm(of(AlarmType.FLAPPING, "garden-ap-03")).orElseThrow();
        assertThat(alarm.cause()).isEqualTo(CauseKind.FLAPPING);
        assertThat(town.rows.ids("select count(*) from alarm_change c join alarm a on a.id = c.alarm_id where a.type ="
                        + " 'flapping' and c.severity = 1"))
                .containsExactly(0L);
        town.faults.switchOff(Fault.FLAPPING, town.device("garden-ap-03"));
        town.run(CALM_HOUR);
        assertThat(active()).isEmpty();
    }

    @Test
    void aBusyRoomBehindAnAccessPointThatHangsIsNoSecondCause() {
        AlarmKey busy = radio(AlarmType.UTILISATION_HIGH, "garden-ap-03", 2);
        on(Fault.ROOM_SATURATED, "garden-ap-03");
        town.run(LONG_ENOUGH);
        assertThat(town.alarm(busy).orElseThrow().causedBy()).isEmpty();
        on(Fault.HUNG, "garden-ap-03");
        town.run(Duration.ofMinutes(5));
        AlarmKey silence = of(AlarmType.DEVICE_SILENT, "garden-ap-03");
        assertThat(town.causes()).extracting(OpenAlarm::key).containsExactly(silence);
        assertThat(town.alarm(busy).orElseThrow().causedBy())
                .hasValue(town.alarm(silence).orElseThrow().id());
        town.faults.switchOff(Fault.HUNG, town.device("garden-ap-03"));
        town.run(Duration.ofMinutes(3));
        assertThat(town.alarm(silence)).isEmpty();
        assertThat(town.alarm(busy).orElseThrow().causedBy()).isEmpty();
    }

    @Test
    void lostDatagramsAreNoFault() {
        town.sites().forEach(site -> town.faults.switchOn(Fault.LOSSY, site));
        town.run(Duration.ofMinutes(20));
        assertThat(active()).isEmpty();
    }
}
