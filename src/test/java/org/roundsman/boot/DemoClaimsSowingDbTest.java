package org.roundsman.boot;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.roundsman.claims.Claim;
import org.roundsman.claims.ClaimBook;
import org.roundsman.claims.ClaimState;
import org.roundsman.claims.Spares;
import org.roundsman.claims.Stay;
import org.roundsman.claims.Units;
import org.roundsman.claims.UnitsFixture;
import org.roundsman.demo.DemoDevice;
import org.roundsman.demo.DemoFleet;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.web.FleetFixture;
import org.roundsman.web.MarkedPlaces;

/** The invented claims and spares. */
@QuarkusTest
class DemoClaimsSowingDbTest {

    private static final CustomerScope ALL = CustomerScope.everyone();

    @Inject
    DemoClaimsSowing sowing;

    @Inject
    FleetFixture fixture;

    @Inject
    UnitsFixture devices;

    @Inject
    MarkedPlaces places;

    @Inject
    ClaimBook book;

    @Inject
    Spares spares;

    @Inject
    Units units;

    @Inject
    Clock clock;

    /** Only what is covered makes a good example of a claim. */
    private void covered(long site) {
        long model = places.number("insert into model (maker, name, kind, terms_kind) values ('Tamarack Radio', 'C-"
                + site + "', 'ACCESS_POINT', 'LIFETIME_OF_OWNER') returning id");
        places.tell("update device set model_id = " + model + " where site_id = " + site);
    }

    @Test
    void twoClaimsAndSparesAreThereAndSowingAgainAddsNothing() {
        DemoFleet fleet = DemoFleet.of(DemoFleet.SMALLEST, 77, 26_199);
        FleetFixture.Place place = fixture.place("Brackwater");
        List<DemoDevice> points = fleet.devices().stream()
                .filter(one -> one.isAccessPoint() && one.standing().isEmpty())
                .limit(3)
                .toList();
        Map<Integer, Long> ids = new HashMap<>();
        for (DemoDevice point : points) {
            ids.put(
                    point.number(),
                    fixture.device(place.siteId(), place.credentialId(), point.name(), point.host(), point.port()));
        }
        covered(place.siteId());
        Instant first = clock.instant().truncatedTo(ChronoUnit.SECONDS);
        DemoSown sown = new DemoSown(fleet, ids, first);
        sowing.fill(sown);
        long replaced = ids.get(points.get(0).number());
        Claim one = book.ofDevice(ALL, replaced).get(0);
        assertThat(one.state()).isEqualTo(ClaimState.REPLACED);
        assertThat(one.known().failure().get(0)).contains("Invented");
        assertThat(one.known().terms()).isEqualTo("lifetime while the first owner keeps it");
        assertThat(units.past(ALL, replaced))
                .extracting(Stay::serial)
                .containsExactly(points.get(0).serial(), points.get(0).serial() + "-OLD");
        assertThat(book.ofDevice(ALL, ids.get(points.get(1).number())))
                .extracting(Claim::state)
                .containsExactly(ClaimState.SENT);
        assertThat(spares.all(ALL))
                .anyMatch(spare -> spare.unit().serial().equals(points.get(2).swappedSerial()));
        devices.says(
                replaced, place.siteId(), first.plusSeconds(5), points.get(0).serial());
        devices.follow();
        assertThat(units.past(ALL, replaced)).as("what the agent says fits").hasSize(2);
        int before = spares.all(ALL).size();
        sowing.sow(sown);
        assertThat(spares.all(ALL)).hasSize(before);
        assertThat(book.ofDevice(ALL, replaced)).hasSize(1);
    }
}
