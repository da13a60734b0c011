package org.roundsman.claims;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.InputRejected;
import org.roundsman.web.FleetFixture;

/** Several people do the same at once: one gets it, the others are told why not. */
@QuarkusTest
class AtOnceDbTest {

    private static final CustomerScope ALL = CustomerScope.everyone();
    private static final int PEOPLE = 4;

    @Inject
    FleetFixture fleet;

    @Inject
    UnitsFixture fixture;

    @Inject
    Claims claims;

    @Inject
    StoreRooms rooms;

    @Inject
    Clock clock;

    /** What each is told: the field that was refused, or {@code done}. Anything but a refusal fails the test. */
    private static List<String> atOnce(Runnable work) throws Exception {
        CyclicBarrier start = new CyclicBarrier(PEOPLE);
        ExecutorService people = Executors.newFixedThreadPool(PEOPLE);
        try {
            List<Future<String>> told = new ArrayList<>();
            for (int i = 0; i < PEOPLE; i++) {
                told.add(people.submit(() -> {
                    start.await(10, TimeUnit.SECONDS);
                    return told(work);
                }));
            }
            List<String> all = new ArrayList<>();
            for (Future<String> one : told) {
                all.add(one.get(30, TimeUnit.SECONDS));
            }
            return all;
        } finally {
            people.shutdownNow();
        }
    }

    private static String told(Runnable work) {
        try {
            work.run();
            return "done";
        } catch (InputRejected e) {
            return String.join(",", e.faults().keySet());
        }
    }

    @Test
    void oneClaimOfAUnitIsOpened() throws Exception {
        FleetFixture.Place place = fleet.place("Saltmarsh");
        fixture.says(
                place.deviceId(), place.siteId(), clock.instant().minus(Duration.ofHours(3)), UnitsFixture.serial());
        fixture.follow();
        ClaimDraft draft = new ClaimDraft(place.deviceId(), null, null, "", "Dead", "");
        assertThat(atOnce(() -> claims.open(ALL, draft))).containsExactlyInAnyOrder("done", "unit", "unit", "unit");
    }

    @Test
    void oneRoomOfANameIsAdded() throws Exception {
        String name = "Van " + UnitsFixture.serial();
        assertThat(atOnce(() -> rooms.add(ALL, null, name, "")))
                .containsExactlyInAnyOrder("done", "name", "name", "name");
    }
}
