package org.roundsman.claims;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.awaitility.Awaitility;
import org.junit.jupiter.api.Test;
import org.roundsman.claims.ReplacementDraft.Old;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.InputRejected;
import org.roundsman.web.FleetFixture;
import org.roundsman.web.MarkedPlaces;

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
    Replacements replacements;

    @Inject
    Spares spares;

    @Inject
    StoreRooms rooms;

    @Inject
    Units units;

    @Inject
    MarkedPlaces tables;

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

    /** Does the first work, begins the second, which has to wait, and lets the first end; what the second was told. */
    private Map<String, String> second(Runnable first, Runnable second) throws Exception {
        CompletableFuture<Map<String, String>> told = new CompletableFuture<>();
        QuarkusTransaction.requiringNew().run(() -> {
            first.run();
            new Thread(() -> faults(second, told)).start();
            Awaitility.await().until(() -> tables.number("select count(*) from pg_locks where not granted") > 0);
        });
        return told.get(30, TimeUnit.SECONDS);
    }

    private static void faults(Runnable work, CompletableFuture<Map<String, String>> told) {
        try {
            work.run();
            told.complete(Map.of());
        } catch (InputRejected e) {
            told.complete(e.faults());
        } catch (RuntimeException e) {
            told.completeExceptionally(e);
        }
    }

    private Runnable replace(long device, Long spare, String serial) {
        return () -> replacements.announce(
                ALL, new ReplacementDraft(device, spare, serial, null, null, Old.SCRAPPED, null, null, "", null));
    }

    @Test
    void ofTwoUnitsForAPlaceWhoseUnitIsNotKnownTheSecondIsRefused() throws Exception {
        long device = fleet.place("Saltmarsh").deviceId();
        String one = UnitsFixture.serial();
        assertThat(second(replace(device, null, one), replace(device, null, UnitsFixture.serial())))
                .containsOnlyKeys("")
                .extractingByKey("")
                .asString()
                .contains("at the same moment another unit");
        assertThat(units.at(ALL, device).orElseThrow().serial()).isEqualTo(one);
    }

    @Test
    void ofTwoUnitsForAPlaceWhoseUnitIsKnownTheSecondIsRefused() throws Exception {
        FleetFixture.Place place = fleet.place("Saltmarsh");
        fixture.says(
                place.deviceId(), place.siteId(), clock.instant().minus(Duration.ofHours(3)), UnitsFixture.serial());
        fixture.follow();
        String one = UnitsFixture.serial();
        assertThat(second(replace(place.deviceId(), null, one), replace(place.deviceId(), null, UnitsFixture.serial())))
                .containsOnlyKeys("")
                .extractingByKey("")
                .asString()
                .contains("announced here already, serial number " + one);
    }

    @Test
    void ofTwoSerialNumbersReadFromOneUnitTheSecondIsRefused() throws Exception {
        long device = fleet.place("Saltmarsh").deviceId();
        String one = UnitsFixture.serial();
        ClaimDraft other = new ClaimDraft(device, null, null, UnitsFixture.serial(), "Dead", "");
        assertThat(second(
                        () -> claims.open(ALL, new ClaimDraft(device, null, null, one, "Dead", "")),
                        () -> claims.open(ALL, other)))
                .containsOnlyKeys("");
        CompletableFuture<Map<String, String>> later = new CompletableFuture<>();
        faults(() -> claims.open(ALL, other), later);
        assertThat(later.join())
                .as("nor is a claim of the one opened when the other was meant")
                .containsOnlyKeys("")
                .extractingByKey("")
                .asString()
                .contains("known as serial number " + one);
    }

    @Test
    void aSpareIsTakenOnce() throws Exception {
        FleetFixture.Place place = fleet.place("Saltmarsh");
        long device = fleet.device(place.siteId(), place.credentialId(), "second", "127.99.0.9", 16_099);
        long room = rooms.add(ALL, place.customerId(), "Cellar", "").id();
        long spare = spares.add(ALL, new SpareDraft(UnitsFixture.serial(), null, room, null, ""))
                .id();
        Runnable move = () -> spares.move(ALL, spare, null, place.siteId());
        assertThat(second(move, move)).containsOnlyKeys("id");
        long moved = spares.all(CustomerScope.of(place.customerId())).get(0).id();
        assertThat(second(replace(place.deviceId(), moved, ""), replace(device, moved, "")))
                .containsOnlyKeys("spare");
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
