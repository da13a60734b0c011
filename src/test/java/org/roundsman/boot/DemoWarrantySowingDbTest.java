package org.roundsman.boot;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.roundsman.demo.DemoFleet;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.warranty.Contracts;
import org.roundsman.warranty.Evidence;
import org.roundsman.warranty.Evidences;
import org.roundsman.warranty.UnitCover;
import org.roundsman.warranty.Warranties;
import org.roundsman.web.FleetFixture;
import org.roundsman.web.MarkedPlaces;

/** The invented purchases of the demonstration. */
@QuarkusTest
class DemoWarrantySowingDbTest {

    private static final int DEVICES = 60;

    @Inject
    DemoWarrantySowing sowing;

    @Inject
    Warranties warranties;

    @Inject
    Contracts contracts;

    @Inject
    Evidences evidences;

    @Inject
    FleetFixture fixture;

    @Inject
    MarkedPlaces places;

    @Inject
    Clock clock;

    @Test
    void nearlyEveryDeviceWasBoughtAndNothingIsTouchedTwice() {
        FleetFixture.Place place = fixture.place("Saltmarsh");
        Map<Integer, Long> ids = new HashMap<>();
        for (int number = 0; number < DEVICES; number++) {
            ids.put(
                    number,
                    fixture.device(
                            place.siteId(), place.credentialId(), "ap-" + number, "ap" + number + ".example", 161));
        }
        DemoSown event = new DemoSown(DemoFleet.of(DemoFleet.USUAL_SIZE, DemoFleet.USUAL_SEED), ids, clock.instant());
        sowing.sown(event);
        CustomerScope scope = CustomerScope.of(place.customerId());
        List<UnitCover> units = warranties.all(scope);
        List<UnitCover> bought =
                units.stream().filter(one -> one.unit().purchase().isPresent()).toList();
        assertThat(bought).hasSizeBetween(DEVICES * 8 / 10, DEVICES - 1);
        LocalDate today = LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC);
        assertThat(bought).allSatisfy(one -> {
            var facts = one.unit().purchase().orElseThrow().facts();
            assertThat(facts.note()).isEqualTo("Invented for demonstration");
            if (facts.boughtOn() != null) {
                assertThat(facts.boughtOn()).isBeforeOrEqualTo(facts.deliveredOn());
                assertThat(facts.deliveredOn()).isBeforeOrEqualTo(facts.installedOn());
                assertThat(facts.installedOn()).isBeforeOrEqualTo(today);
            }
        });
        assertThat(bought)
                .anyMatch(one -> one.unit().purchase().orElseThrow().facts().boughtOn() == null);
        assertThat(contracts.all(scope)).hasSize(1);
        List<Evidence> files = bought.stream()
                .flatMap(one -> evidences.list(scope, one.purchaseId().orElseThrow()).stream())
                .toList();
        assertThat(files).hasSize(1);
        assertThat(files.get(0).name()).startsWith("invoice INV-").endsWith(".pdf");
        long entries = places.number("select count(*) from audit_entry where customer_id = " + place.customerId());
        sowing.sown(event);
        assertThat(places.number("select count(*) from audit_entry where customer_id = " + place.customerId()))
                .as("a second start changes nothing")
                .isEqualTo(entries);
    }
}
