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
import org.roundsman.claims.ReplacementDraft.Old;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.InputRejected;
import org.roundsman.web.FleetFixture;
import org.roundsman.web.MarkedPlaces;

/** What is known of the other units when an announcement proves wrong or is taken back. */
@QuarkusTest
class ReplacedUnitsDbTest {

    private static final CustomerScope ALL = CustomerScope.everyone();

    @Inject
    FleetFixture fleet;

    @Inject
    UnitsFixture fixture;

    @Inject
    Units units;

    @Inject
    Replacements replacements;

    @Inject
    Claims claims;

    @Inject
    ClaimBook book;

    @Inject
    Spares spares;

    @Inject
    StoreRooms rooms;

    @Inject
    MarkedPlaces tables;

    @Inject
    Clock clock;

    private final String a = UnitsFixture.serial();
    private final String b = UnitsFixture.serial();
    private final String c = UnitsFixture.serial();
    private FleetFixture.Place place;
    private long device;
    private StoreRoom room;

    @BeforeEach
    void aDevice() {
        place = fleet.place("Saltmarsh");
        device = place.deviceId();
        room = rooms.add(ALL, null, "Van " + b, "");
        fixture.says(device, place.siteId(), ago(48), a);
        fixture.follow();
    }

    private Instant ago(int hours) {
        return clock.instant().truncatedTo(ChronoUnit.HOURS).minus(Duration.ofHours(hours));
    }

    private void saysNow(String serial) {
        fixture.says(device, place.siteId(), clock.instant().plusSeconds(1), serial);
        fixture.follow();
    }

    private Spare spare(String serial) {
        return spares.add(ALL, new SpareDraft(serial, fixture.model("TR-22"), room.id(), null, ""));
    }

    private ReplacementDraft ofSpare(Spare spare, Old old, Long into) {
        return new ReplacementDraft(device, spare.id(), "", null, ago(10), old, into, null, "", null);
    }

    private ReplacementDraft typed(long at, String serial, Old old, Long into) {
        return new ReplacementDraft(at, null, serial, null, null, old, into, null, "", null);
    }

    private List<String> inStore() {
        return spares.all(ALL).stream()
                .filter(one -> one.roomId().equals(java.util.OptionalLong.of(room.id())))
                .map(one -> one.unit().serial())
                .sorted()
                .toList();
    }

    private UnitPast whole(String serial) {
        return units.find(ALL, place.customerId(), serial)
                .flatMap(unit -> units.whole(ALL, unit.id()))
                .orElseThrow();
    }

    private static Map<String, String> refused(Runnable work) {
        return catchThrowableOfType(InputRejected.class, work::run).faults();
    }

    @Test
    void aThirdUnitThatIsAcceptedLeavesTheFormerOneWhereItWent() {
        Claim claim = claims.open(ALL, new ClaimDraft(device, null, null, "", "Dead", ""));
        Spare announced = spare(b);
        spare(c);
        replacements.announce(ALL, ofSpare(announced, Old.SENT_BACK, null));
        saysNow(c);
        assertThat(replacements.accept(ALL, device).serial()).isEqualTo(c);
        UnitPast former = whole(a);
        assertThat(former.whereabouts()).isEqualTo("sent back");
        assertThat(former.stays().get(0).stay().until()).hasValue(ago(10));
        assertThat(inStore())
                .as("the announced one is back, the accepted one is out")
                .containsExactly(b);
        assertThat(whole(c).whereabouts()).startsWith("stands at");
        Claim after = book.find(ALL, claim.id()).orElseThrow();
        assertThat(after.newSerial()).isEqualTo(c);
        assertThat(book.changes(ALL, claim.id()))
                .extracting(ClaimChange::note)
                .noneMatch(note -> note.contains("did not take its place"));
    }

    @Test
    void aFormerUnitThatWentIntoStoreStaysThereWhenAThirdOneIsAccepted() {
        replacements.announce(ALL, ofSpare(spare(b), Old.SPARE, room.id()));
        saysNow(c);
        replacements.accept(ALL, device);
        assertThat(inStore()).containsExactlyInAnyOrder(a, b);
    }

    @Test
    void theFormerUnitStandsOnWhenTheDeviceNamesIt() {
        replacements.announce(ALL, ofSpare(spare(b), Old.SCRAPPED, null));
        saysNow(c);
        saysNow(a);
        assertThat(replacements.accept(ALL, device).serial()).isEqualTo(a);
        assertThat(whole(a).unit().fate()).isEmpty();
        assertThat(inStore()).containsExactly(b);
    }

    @Test
    void anAnnouncementIsNotWithdrawnWhileTheFormerUnitStandsElsewhere() {
        long second = fleet.device(place.siteId(), place.credentialId(), "second", "127.99.0.9", 16_099);
        replacements.announce(ALL, typed(device, b, Old.SPARE, room.id()));
        long former = spares.all(ALL).stream()
                .filter(one -> one.unit().serial().equals(a))
                .findFirst()
                .orElseThrow()
                .id();
        replacements.announce(
                ALL, new ReplacementDraft(second, former, "", null, null, Old.SCRAPPED, null, null, "", null));
        assertThat(refused(() -> replacements.withdraw(ALL, device)).get("former"))
                .startsWith("serial number " + a + " stands at second, ")
                .endsWith("; withdraw that first");
        assertThat(whole(b).whereabouts()).as("nothing was changed").startsWith("stands at");
        replacements.withdraw(ALL, second);
        replacements.withdraw(ALL, device);
        assertThat(whole(a).whereabouts()).startsWith("stands at Pier AP");
        assertThat(inStore()).isEmpty();
    }

    @Test
    void aTypedSerialNumberThatLiesInTheFirmsStoreIsThatVeryUnit() {
        long unit = spare(b).unit().id();
        assertThat(replacements
                        .announce(ALL, typed(device, b.toLowerCase(), Old.SCRAPPED, null))
                        .unitId())
                .isEqualTo(unit);
        assertThat(inStore()).isEmpty();
        replacements.withdraw(ALL, device);
        assertThat(inStore()).containsExactly(b);
    }

    @Test
    void whatStandsInAPlaceIsNotTakenIntoTheFirmsStore() {
        assertThat(refused(() -> spare(a.toLowerCase())).get("serial")).startsWith("this unit stands at Pier AP");
        CustomerScope other = CustomerScope.of(fleet.place("Orrin").customerId());
        StoreRoom theirs = rooms.add(other, other.onlyCustomer(), "Cellar", "");
        assertThat(refused(() -> spares.add(other, new SpareDraft(a, null, theirs.id(), null, "")))
                        .get("serial"))
                .as("told without whose place it is")
                .isEqualTo("this unit stands in a place elsewhere");
    }

    @Test
    void theFirmsOwnUnitHasThePurchaseOfACustomerOnlyWhereItStood() {
        long stranger = fleet.place("Orrin").customerId();
        bought(stranger, a, "Orrin Supply");
        bought(stranger, b, "Orrin Supply");
        bought(place.customerId(), a, "Harbour Supply");
        spare(b);
        replacements.announce(ALL, typed(device, c, Old.SPARE, room.id()));
        assertThat(purchaseOf(a)).startsWith("Harbour Supply");
        assertThat(purchaseOf(b)).isEmpty();
        for (Spare one : spares.all(ALL)) {
            if (one.unit().serial().equals(a)) {
                assertThat(one.purchase()).startsWith("Harbour Supply");
            }
            if (one.unit().serial().equals(b)) {
                assertThat(one.purchase()).isEmpty();
            }
        }
    }

    private void bought(long customer, String serial, String supplier) {
        tables.tell(
                "insert into purchase (customer_id, serial, supplier) values (" + customer + ", '" + serial + "', ?)",
                supplier);
    }

    private String purchaseOf(String serial) {
        long unit = tables.number("select id from unit where serial = '" + serial + "'");
        return units.whole(ALL, unit).orElseThrow().purchase();
    }

    @Test
    void aCustomersUnitInTheFirmsRoomStaysTheCustomersAndIsOfferedToNobodyElse() {
        long other = fleet.place("Orrin").customerId();
        replacements.announce(ALL, ofSpare(spare(b), Old.SPARE, room.id()));
        Spare old = spares.usableBy(ALL, place.customerId()).stream()
                .filter(one -> one.unit().serial().equals(a))
                .findFirst()
                .orElseThrow();
        assertThat(old.unit().owner()).hasValue(place.customerId());
        assertThat(spares.usableBy(ALL, other))
                .extracting(one -> one.unit().serial())
                .doesNotContain(a);
        saysNow(b);
        replacements.announce(ALL, ofSpareNow(old));
        replacements.withdraw(ALL, device);
        assertThat(spares.find(ALL, old.id()).orElseThrow().unit().owner()).hasValue(place.customerId());
        CustomerScope own = CustomerScope.of(place.customerId());
        assertThat(units.whole(own, old.unit().id()).orElseThrow().whereabouts())
                .as("not in which room of the firm's")
                .isEqualTo("not known");
    }

    private ReplacementDraft ofSpareNow(Spare spare) {
        return new ReplacementDraft(device, spare.id(), "", null, null, Old.SCRAPPED, null, null, "", null);
    }
}
