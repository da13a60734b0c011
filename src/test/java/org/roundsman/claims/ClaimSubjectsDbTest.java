package org.roundsman.claims;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.alarms.AlarmDesk;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.Resource;
import org.roundsman.alarms.Severity;
import org.roundsman.alarms.Signal;
import org.roundsman.claims.ReplacementDraft.Old;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.InputRejected;
import org.roundsman.web.FleetFixture;
import org.roundsman.web.MarkedPlaces;

/** Which unit a claim is about where one came and another went. */
@QuarkusTest
class ClaimSubjectsDbTest {

    private static final CustomerScope ALL = CustomerScope.everyone();

    @Inject
    FleetFixture fleet;

    @Inject
    UnitsFixture fixture;

    @Inject
    Claims claims;

    @Inject
    Units units;

    @Inject
    Replacements replacements;

    @Inject
    AlarmDesk alarms;

    @Inject
    MarkedPlaces tables;

    @Inject
    Clock clock;

    private final String a = UnitsFixture.serial();
    private final String b = UnitsFixture.serial();
    private FleetFixture.Place place;

    @BeforeEach
    void aDevice() {
        place = fleet.place("Saltmarsh");
        says(48, a);
    }

    private Instant ago(int hours) {
        return clock.instant().truncatedTo(ChronoUnit.HOURS).minus(Duration.ofHours(hours));
    }

    private void says(int hoursAgo, String serial) {
        fixture.says(place.deviceId(), place.siteId(), ago(hoursAgo), serial);
        fixture.follow();
    }

    private long alarm(long device, int hoursAgo) {
        AlarmKey key = AlarmKey.of(AlarmType.RADIO_OFF, Resource.radio(device, 2));
        alarms.accept(List.of(new Signal.Raise(key, Severity.MAJOR, ago(hoursAgo), ago(hoursAgo), "Radio 2 is off.")));
        return tables.number("select max(id) from alarm where resource_kind = 'DEVICE' and resource_id = " + device);
    }

    private String subject(Long device, Long alarm) {
        return claims.look(ALL, new ClaimDraft(device, alarm, null, "", "Dead", ""))
                .known()
                .serial();
    }

    @Test
    void aClaimFromAnAlarmIsAboutTheUnitThatStoodThereWhenItBegan() {
        long alarm = alarm(place.deviceId(), 24);
        says(12, b);
        assertThat(subject(null, alarm)).isEqualTo(a);
        assertThat(subject(place.deviceId(), null)).as("of today").isEqualTo(b);
    }

    @Test
    void untilTheDeviceSaysTheAnnouncedUnitTheOneBeforeIsMeant() {
        replacements.announce(
                ALL,
                new ReplacementDraft(
                        place.deviceId(), null, b, null, ago(6), Old.SPARE, null, place.siteId(), "", null));
        assertThat(subject(place.deviceId(), null)).isEqualTo(a);
        assertThat(subject(null, alarm(place.deviceId(), 3))).isEqualTo(a);
    }

    @Test
    void anAlarmOfAnotherDeviceOrOfNoneIsRefused() {
        long other = alarm(fleet.place("Orrin").deviceId(), 3);
        long own = alarm(place.deviceId(), 3);
        long unit = units.at(ALL, place.deviceId()).orElseThrow().unitId();
        for (long alarm : new long[] {other, Long.MAX_VALUE}) {
            assertThat(refused(new ClaimDraft(null, alarm, unit, "", "Dead", "")))
                    .containsKey("alarm");
            assertThat(refused(new ClaimDraft(place.deviceId(), alarm, null, "", "Dead", "")))
                    .containsKey("alarm");
        }
        Claim claim = claims.open(ALL, new ClaimDraft(null, own, unit, "", "Dead", ""));
        assertThat(claim.alarmId()).hasValue(own);
    }

    private Map<String, String> refused(ClaimDraft draft) {
        return catchThrowableOfType(InputRejected.class, () -> claims.open(ALL, draft))
                .faults();
    }
}
