package org.roundsman.boot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.roundsman.alarms.AlarmBook;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.demo.DemoDevice;
import org.roundsman.demo.DemoFleet;
import org.roundsman.firmware.FirmwareChange;
import org.roundsman.firmware.FirmwareChanges;
import org.roundsman.firmware.FirmwarePolicies;
import org.roundsman.firmware.FirmwareStates;
import org.roundsman.firmware.FirmwareStatus;
import org.roundsman.firmware.LinePolicy;
import org.roundsman.firmware.Release;
import org.roundsman.firmware.ReleaseDraft;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.testing.FirmwareAtWork;
import org.roundsman.web.FleetFixture;
import org.roundsman.web.MarkedPlaces;

/** The invented policy and past, and the thread that looks after alarms and upgrades, with all parts in place. */
@QuarkusTest
@TestProfile(FirmwareAtWork.class)
class DemoFirmwareDbTest {

    private static final CustomerScope ALL = CustomerScope.everyone();
    private static final Duration SOON = Duration.ofSeconds(30);

    @Inject
    DemoFirmwareSowing sowing;

    @Inject
    FirmwarePolicies policies;

    @Inject
    FirmwareStates states;

    @Inject
    FirmwareChanges changes;

    @Inject
    AlarmBook book;

    @Inject
    FleetFixture fixture;

    @Inject
    MarkedPlaces places;

    @Inject
    Clock clock;

    private final DemoFleet fleet = DemoFleet.of(DemoFleet.SMALLEST, DemoFleet.USUAL_SEED);
    private final Map<Integer, Long> ids = new HashMap<>();

    private long stand(FleetFixture.Place place, String name, long model) {
        DemoDevice device = fleet.devices().stream()
                .filter(one -> one.name().equals(name))
                .findFirst()
                .orElseThrow();
        long id = fixture.device(place.siteId(), place.credentialId(), name, "127.99.0." + (10 + ids.size()), 16_099);
        places.tell("update device set model_id = " + model + " where id = " + id);
        ids.put(device.number(), id);
        return id;
    }

    private List<OpenAlarm> alarms(long site) {
        return book.ofSite(ALL, site).stream()
                .filter(alarm -> alarm.key().type() == AlarmType.FIRMWARE_WITHDRAWN)
                .toList();
    }

    private FirmwareStatus status(long device) {
        return states.of(ALL, List.of(device)).get(device).status();
    }

    @Test
    void theInventedPolicyAndPastAreSownOnceAndTheWatchFollowsThem() {
        long model = places.number("insert into model (maker, name, kind) values ('Tamarack Radio', 'TR-22',"
                + " 'ACCESS_POINT') on conflict (maker, name) do update set radios = 2 returning id");
        FleetFixture.Place shop = fixture.place("Orrin");
        FleetFixture.Place other = fixture.place("Thistledown");
        long excepted = stand(shop, "exchange-ap-01", model);
        long pilot = stand(shop, "castle-gate-ap-03", model);
        long upgraded = fleet.devices().stream()
                .filter(one -> one.isAccessPoint() && one.standing().isEmpty() && one.number() % 4 == 0)
                .map(one -> stand(other, one.name(), model))
                .findFirst()
                .orElseThrow();
        DemoSown event = new DemoSown(fleet, ids, Instant.now(clock).minus(Duration.ofHours(3)));
        sowing.sown(event);
        long line = places.number("select firmware_line_id from model where id = " + model);
        LinePolicy sown = policies.find(line).orElseThrow();
        assertThat(sown.releases()).hasSize(4);
        assertThat(sown.pilots()).extracting(LinePolicy.PilotSite::siteId).contains(shop.siteId());
        assertThat(status(excepted)).isEqualTo(FirmwareStatus.EXCEPTED);
        assertThat(status(pilot)).as("it is behind until its hour comes").isEqualTo(FirmwareStatus.EXCEPTED);
        sowing.sown(event);
        assertThat(policies.find(line).orElseThrow()).isEqualTo(sown);

        await().atMost(SOON).untilAsserted(() -> assertThat(
                        changes.page(ALL, OptionalLong.of(upgraded), 1, 9).items())
                .hasSize(1)
                .extracting(FirmwareChange::old, FirmwareChange::fresh)
                .containsExactly(org.assertj.core.groups.Tuple.tuple("6.3.1", "6.4.2")));
        assertThat(changes.page(ALL, OptionalLong.of(upgraded), 1, 9)
                        .items()
                        .get(0)
                        .restartedAt())
                .isPresent();
        theAlarmFollowsThePolicy(line, other.siteId());
    }

    private void theAlarmFollowsThePolicy(long line, long site) {
        assertThat(alarms(site)).isEmpty();
        ReleaseDraft withdrawal =
                new ReleaseDraft(null, "6.4.2", Release.Stand.WITHDRAWN, "it loses its settings", null, null);
        Release withdrawn = policies.save(line, withdrawal);
        await().atMost(SOON).untilAsserted(() -> assertThat(alarms(site))
                .singleElement()
                .satisfies(alarm -> assertThat(alarm.text()).contains("it loses its settings")));
        policies.removeRelease(line, withdrawn.id());
        await().atMost(SOON).untilAsserted(() -> assertThat(alarms(site)).isEmpty());
    }
}
