package org.roundsman.discovery;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.awaitility.Awaitility.await;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.IOException;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.discovery.Neighbourhood.House;
import org.roundsman.fleet.CredentialDraft;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.Device;
import org.roundsman.fleet.DeviceFacts;
import org.roundsman.fleet.Devices;
import org.roundsman.fleet.InputRejected;
import org.roundsman.fleet.SiteDraft;
import org.roundsman.fleet.Sites;
import org.roundsman.timeline.DeviceEvent;
import org.roundsman.timeline.EventKind;
import org.roundsman.timeline.Timeline;
import org.roundsman.web.FleetFixture;
import org.snmp4j.smi.OctetString;

/** From a sweep over real agents to devices of the fleet, and what becomes of devices that move. Rules of our own. */
@QuarkusTest
class AdoptionDbTest {

    private static final CustomerScope ALL = CustomerScope.everyone();
    private static final String SYS_NAME = "1.3.6.1.2.1.1.5.0";
    private static final AtomicInteger NUMBER = new AtomicInteger(100);

    @Inject
    FleetFixture fixture;

    @Inject
    Sweeps sweeps;

    @Inject
    Reviews reviews;

    @Inject
    Adoption adoption;

    @Inject
    Devices devices;

    @Inject
    Sites sites;

    @Inject
    DeviceFacts facts;

    @Inject
    Timeline timeline;

    private Neighbourhood street;
    private FleetFixture.Place place;
    private final int first = NUMBER.getAndAdd(10);

    @BeforeEach
    void threeAgents() throws IOException {
        street = new Neighbourhood();
        place = fixture.place("Saltmarsh");
        for (int i = 1; i <= 3; i++) {
            street.house("127.81.0." + i, 2, "quayside-secret", first + i);
        }
    }

    @AfterEach
    void close() throws IOException {
        street.close();
    }

    private SweepReview sweep(long siteId) {
        sweeps.save(ALL, siteId, new SweepPlan("127.81.0.1-127.81.0.6", List.of(street.port()), true, List.of()));
        sweeps.start(ALL, siteId);
        await().atMost(Duration.ofMinutes(2)).until(() -> sweeps.progress(ALL, siteId)
                .filter(p -> p.sweep().state() == SweepState.DONE)
                .isPresent());
        return reviews.latest(ALL, siteId).orElseThrow();
    }

    private static List<Review> ticked(SweepReview review) {
        return review.found().stream()
                .filter(FoundDevice::isOpen)
                .map(f -> new Review(
                        f.findingId(),
                        true,
                        f.entry().name(),
                        f.entry().kind(),
                        f.entry().place()))
                .toList();
    }

    private Adopted adoptAll(long siteId) {
        return adoption.adopt(ALL, siteId, ticked(sweep(siteId)));
    }

    private Map<String, Device> byName(long siteId) {
        return devices.ofSite(ALL, siteId).stream().collect(Collectors.toMap(d -> d.name, d -> d));
    }

    private static Map<String, Standing> standings(SweepReview review) {
        return review.found().stream().collect(Collectors.toMap(f -> f.first().host(), f -> f.decision()
                .standing()));
    }

    @Test
    void whatAnswersIsAdoptedWithItsFactsAndKnownTheNextTime() {
        SweepReview review = sweep(place.siteId());
        assertThat(review.found()).hasSize(3).allSatisfy(f -> {
            assertThat(f.decision().standing()).isEqualTo(Standing.NEW);
            assertThat(f.entry().place()).startsWith("Pier ");
        });
        assertThat(review.unanswered()).singleElement().satisfies(d -> assertThat(d.reason())
                .contains("not among those"));
        assertThat(adoption.adopt(ALL, place.siteId(), ticked(review))).isEqualTo(new Adopted(3, 0, 0));
        Device device = byName(place.siteId()).get("ap-" + (first + 1));
        assertThat(device.host).isEqualTo("127.81.0.1");
        assertThat(device.credential.id).isEqualTo(place.credentialId());
        assertThat(facts.of(device.id)).anySatisfy(said -> {
            assertThat(said.fact()).isEqualTo("SERIAL");
            assertThat(said.value()).isEqualTo("TR22-" + (10_001 + first));
        });
        assertThat(timeline.latest(device.id, 5)).extracting(DeviceEvent::kind).contains(EventKind.ADOPTED);
        assertThat(standings(sweep(place.siteId())).values()).containsOnly(Standing.KNOWN);
    }

    @Test
    void aDeviceThatChangedItsAddressIsNotAddedTwice() throws IOException {
        adoptAll(place.siteId());
        Device before = byName(place.siteId()).get("ap-" + (first + 1));
        House moved = street.at("127.81.0.1");
        street.put("127.81.0.5", moved);
        street.put("127.81.0.1", dark());
        SweepReview review = sweep(place.siteId());
        assertThat(standings(review)).containsEntry("127.81.0.5", Standing.NEW_ADDRESS);
        assertThat(adoption.adopt(ALL, place.siteId(), ticked(review))).isEqualTo(new Adopted(0, 1, 0));
        Device after = devices.find(ALL, before.id).orElseThrow();
        assertThat(after.host).isEqualTo("127.81.0.5");
        assertThat(after.name).isEqualTo(before.name);
        assertThat(devices.ofSite(ALL, place.siteId())).hasSize(4);
        assertThat(timeline.latest(before.id, 9)).anySatisfy(event -> {
            assertThat(event.kind()).isEqualTo(EventKind.ADDRESS_CHANGED);
            assertThat(event.old()).contains("127.81.0.1");
            assertThat(event.fresh()).contains("127.81.0.5");
        });
    }

    private House dark() {
        House house = new House(2, "nobody");
        house.dark = true;
        return house;
    }

    @Test
    void twoThatSwappedTheirAddressesKeepTheirPasts() throws IOException {
        adoptAll(place.siteId());
        long one = byName(place.siteId()).get("ap-" + (first + 1)).id;
        long two = byName(place.siteId()).get("ap-" + (first + 2)).id;
        House first = street.at("127.81.0.1");
        street.put("127.81.0.1", street.at("127.81.0.2"));
        street.put("127.81.0.2", first);
        assertThat(adoptAll(place.siteId())).isEqualTo(new Adopted(0, 2, 0));
        assertThat(devices.find(ALL, one).orElseThrow().host).isEqualTo("127.81.0.2");
        assertThat(devices.find(ALL, two).orElseThrow().host).isEqualTo("127.81.0.1");
    }

    @Test
    void aDeviceFromAnotherSiteOfTheCustomerMovesHere() {
        adoptAll(place.siteId());
        SiteDraft draft =
                new SiteDraft("Second pier", "Europe/Berlin", "", "", "", "DE", "", null, null, List.of(), List.of());
        long second = sites.add(place.customerId(), draft).id;
        long id = byName(place.siteId()).get("ap-" + (first + 1)).id;
        SweepReview review = sweep(second);
        assertThat(standings(review).values()).containsOnly(Standing.MOVED);
        assertThat(adoption.adopt(ALL, second, ticked(review))).isEqualTo(new Adopted(0, 0, 3));
        assertThat(devices.find(ALL, id).orElseThrow().site.id).isEqualTo(second);
        assertThat(devices.ofSite(ALL, place.siteId())).hasSize(1);
    }

    @Test
    void aDeviceOfAnotherCustomerIsLeftAsItIs() {
        adoptAll(place.siteId());
        long id = byName(place.siteId()).get("ap-" + (first + 1)).id;
        FleetFixture.Place other = fixture.place("Brackwater");
        fixture.credentials().add(CredentialDraft.community(other.customerId(), "same word", 2, "quayside-secret"));
        SweepReview review = sweep(other.siteId());
        assertThat(review.found()).allSatisfy(f -> {
            assertThat(f.decision().standing()).isEqualTo(Standing.NEW);
            assertThat(f.decision().evidence()).anyMatch(line -> line.contains("another customer"));
            assertThat(f.decision().toString()).doesNotContain(place.customer());
        });
        adoption.adopt(ALL, other.siteId(), ticked(review));
        assertThat(devices.find(ALL, id).orElseThrow().host).isEqualTo("127.81.0.1");
    }

    @Test
    void oneBadLineAndNothingIsAdopted() {
        SweepReview review = sweep(place.siteId());
        List<Review> entries = ticked(review).stream()
                .map(e -> new Review(e.findingId(), true, "The same name", e.kind(), e.place()))
                .toList();
        InputRejected refused =
                catchThrowableOfType(InputRejected.class, () -> adoption.adopt(ALL, place.siteId(), entries));
        assertThat(refused.faults().keySet()).hasSize(2).allMatch(field -> field.startsWith("name-"));
        assertThat(devices.ofSite(ALL, place.siteId())).hasSize(1);
    }

    @Test
    void clonesWithOneEngineIdStayApart() {
        for (int i = 1; i <= 3; i++) {
            House house = street.at("127.81.0." + i);
            house.with("1.3.6.1.6.3.10.2.1.1.0", OctetString.fromHexString("80:00:7e:d9:04:01:02:03:04"))
                    .with(SYS_NAME, new OctetString("default"));
            house.objects.keySet().removeIf(oid -> oid.toString().startsWith("1.3.6.1.2.1.47."));
        }
        SweepReview review = sweep(place.siteId());
        assertThat(review.found()).hasSize(3);
        assertThat(review.found()).extracting(f -> f.entry().name()).doesNotHaveDuplicates();
        assertThat(review.found()).allSatisfy(f -> assertThat(f.decision().evidence())
                .anyMatch(line -> line.contains("shared by 3 devices")));
    }

    @Test
    void nobodyReachesASiteOutOfTheirScope() {
        CustomerScope other = CustomerScope.of(place.customerId() + 1_000_000);
        long site = place.siteId();
        for (Runnable work : List.<Runnable>of(
                () -> sweeps.plan(other, site),
                () -> sweeps.save(other, site, SweepPlan.blank()),
                () -> sweeps.start(other, site),
                () -> sweeps.progress(other, site),
                () -> sweeps.cancel(other, site),
                () -> sweeps.resume(other, site),
                () -> sweeps.asides(other, site),
                () -> sweeps.setAside(other, site, "127.81.0.1", 161),
                () -> sweeps.takeBack(other, site, "127.81.0.1", 161),
                () -> reviews.latest(other, site),
                () -> reviews.keep(other, site, List.of()),
                () -> adoption.adopt(other, site, List.of()))) {
            assertThat(catchThrowableOfType(InputRejected.class, work::run).faults())
                    .containsKey("id");
        }
    }

    @Test
    void whatIsEnteredIsCheckedBeforeAnythingIsAsked() {
        SweepPlan wide = new SweepPlan("10.0.0.0/8", List.of(0), false, List.of(987_654_321L));
        assertThat(catchThrowableOfType(InputRejected.class, () -> sweeps.save(ALL, place.siteId(), wide))
                        .faults())
                .containsKeys("ranges", "ports", "credentials");
        assertThat(catchThrowableOfType(InputRejected.class, () -> sweeps.start(ALL, place.siteId()))
                        .faults())
                .containsKey("ranges");
    }
}
