package org.roundsman.rules.live;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import org.awaitility.Awaitility;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.roundsman.alarms.AlarmBook;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.alarms.Severity;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.Devices;
import org.roundsman.polling.ReadingSink;
import org.roundsman.readings.ReadingsFixture;
import org.roundsman.rules.RuleBook;
import org.roundsman.rules.RuleField;
import org.roundsman.rules.RuleLevel;
import org.roundsman.testing.RulesAtWork;
import org.roundsman.web.FleetFixture;

/** The whole way within the service: a round's reading is stored, judged, and becomes an alarm. */
@QuarkusTest
@TestProfile(RulesAtWork.class)
class LiveRulesDbTest {

    private static final CustomerScope EVERYONE = CustomerScope.everyone();

    @Inject
    FleetFixture fixture;

    @Inject
    ReadingSink sink;

    @Inject
    AlarmBook alarms;

    @Inject
    RuleBook book;

    @Inject
    Devices devices;

    @Inject
    Clock clock;

    @AfterEach
    void nothingStaysSet() {
        book.overrides(EVERYONE).forEach(one -> book.remove(EVERYONE, one.id(), one.version()));
    }

    private List<OpenAlarm> busy(FleetFixture.Place place) {
        return alarms.ofDevice(EVERYONE, place.deviceId()).stream()
                .filter(alarm -> alarm.key().type() == AlarmType.UTILISATION_HIGH)
                .toList();
    }

    private void stored(FleetFixture.Place place, Instant from, int minutes, double busy) {
        for (int i = 0; i < minutes; i++) {
            sink.accept(ReadingsFixture.answered(place.deviceId(), from.plus(Duration.ofMinutes(i)), 9, busy));
        }
    }

    private static void soon(Runnable check) {
        Awaitility.await().atMost(Duration.ofSeconds(30)).untilAsserted(check::run);
    }

    @Test
    void aBusyRadioBecomesAnAlarmAndOtherValuesClearIt() {
        FleetFixture.Place place = fixture.place("Quillfeather");
        Instant from = clock.instant().minus(40, ChronoUnit.MINUTES).truncatedTo(ChronoUnit.MINUTES);
        stored(place, from, 20, 92);
        soon(() -> assertThat(busy(place)).hasSize(1));
        OpenAlarm alarm = busy(place).get(0);
        assertThat(alarm.severity()).isEqualTo(Severity.MAJOR);
        assertThat(alarm.began()).isEqualTo(from);
        assertThat(alarm.key().resource().part()).isEqualTo("radio 2");
        book.save(
                EVERYONE,
                new RuleBook.Wish(
                        AlarmType.UTILISATION_HIGH,
                        RuleLevel.DEVICE,
                        place.deviceId(),
                        Map.of(RuleField.ENABLED, "no"),
                        "a test bench"),
                0);
        soon(() -> assertThat(busy(place)).isEmpty());
    }

    @Test
    void anAlarmClearsByItsReadings() {
        FleetFixture.Place place = fixture.place("Thistledown");
        Instant from = clock.instant().minus(60, ChronoUnit.MINUTES).truncatedTo(ChronoUnit.MINUTES);
        stored(place, from, 20, 92);
        soon(() -> assertThat(busy(place)).hasSize(1));
        stored(place, from.plus(Duration.ofMinutes(20)), 17, 10);
        soon(() -> assertThat(busy(place)).isEmpty());
        devices.remove(place.deviceId());
    }
}
