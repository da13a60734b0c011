package org.roundsman.claims;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.claims.ReplacementDraft.Old;
import org.roundsman.claims.Stay.Standing;
import org.roundsman.claims.store.FollowTable;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.Device;
import org.roundsman.fleet.DeviceDraft;
import org.roundsman.fleet.Devices;
import org.roundsman.fleet.InputRejected;
import org.roundsman.measure.Condition;
import org.roundsman.readings.Availability;
import org.roundsman.readings.DeviceHistory;
import org.roundsman.readings.HistoryLoad;
import org.roundsman.shared.Page;
import org.roundsman.web.FleetFixture;
import org.roundsman.web.MarkedPlaces;

/** Which unit stands where: as devices say, and as people say. */
@QuarkusTest
class UnitsDbTest {

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
    Spares spares;

    @Inject
    StoreRooms rooms;

    @Inject
    Devices devices;

    @Inject
    DeviceHistory history;

    @Inject
    HistoryLoad load;

    @Inject
    MarkedPlaces tables;

    @Inject
    DataSource database;

    @Inject
    Clock clock;

    private final String a = UnitsFixture.serial();
    private final String b = UnitsFixture.serial();
    private final String c = UnitsFixture.serial();
    private FleetFixture.Place place;
    private long device;

    @BeforeEach
    void aDevice() {
        place = fleet.place("Saltmarsh");
        device = place.deviceId();
    }

    private Instant ago(int hours) {
        return clock.instant().truncatedTo(ChronoUnit.HOURS).minus(Duration.ofHours(hours));
    }

    private void says(int hoursAgo, String serial) {
        fixture.says(device, place.siteId(), ago(hoursAgo), serial);
    }

    private List<String> stays() {
        return units.past(ALL, device).stream()
                .map(stay -> stay.serial() + " " + stay.from() + " "
                        + stay.until().map(Instant::toString).orElse("now") + " " + stay.standing())
                .toList();
    }

    private String stay(String serial, int from, int until, Standing standing) {
        return serial + " " + ago(from) + " " + (until < 0 ? "now" : ago(until).toString()) + " " + standing;
    }

    private ReplacementDraft draft(String serial, int hoursAgo, Old old) {
        return new ReplacementDraft(device, null, serial, null, ago(hoursAgo), old, null, null, "", null);
    }

    private static Map<String, String> refused(Runnable work) {
        return catchThrowableOfType(InputRejected.class, work::run).faults();
    }

    @Test
    void staysBeginWithTheFactAndFollowEveryChangeAlsoOnesThatPassedUnseen() {
        says(40, a);
        fixture.follow();
        assertThat(stays()).containsExactly(stay(a, 40, -1, Standing.READ));
        says(30, b);
        says(20, c);
        fixture.follow();
        List<String> all =
                List.of(stay(c, 20, -1, Standing.READ), stay(b, 30, 20, Standing.READ), stay(a, 40, 30, Standing.READ));
        assertThat(stays()).isEqualTo(all);
        fixture.follow();
        tables.tell("update unit_cursor set event_id = 0");
        fixture.follow();
        assertThat(stays()).as("read again from the beginning").isEqualTo(all);
        long unit = units.at(ALL, device).orElseThrow().unitId();
        devices.remove(device);
        fixture.follow();
        Stay last = units.whole(ALL, unit).orElseThrow().stays().get(0).stay();
        assertThat(last.until())
                .as("a place that left the fleet holds nothing any more")
                .isPresent();
        assertThat(last.device()).startsWith("Pier AP of");
    }

    @Test
    void aReplacementKeepsOneHistoryForThePlaceAndGivesEachUnitItsOwn() {
        long other = fixture.model("TR-33");
        says(48, a);
        fixture.follow();
        load.load(
                List.of(),
                List.of(
                        new HistoryLoad.PastSpan(device, ago(48), ago(26), Condition.ANSWERING),
                        new HistoryLoad.PastSpan(device, ago(26), ago(24), Condition.SILENT),
                        new HistoryLoad.PastSpan(device, ago(24), ago(0), Condition.ANSWERING)));
        Device before = devices.find(ALL, device).orElseThrow();
        Stay announced = replacements.announce(
                ALL, new ReplacementDraft(device, null, b, other, ago(24), Old.SENT_BACK, null, null, "", null));
        assertThat(announced.awaited()).isTrue();
        assertThat(stays()).containsExactly(stay(b, 24, -1, Standing.ANNOUNCED), stay(a, 48, 24, Standing.READ));
        fixture.says(device, place.siteId(), clock.instant().plusSeconds(1), b);
        fixture.follow();
        assertThat(stays()).containsExactly(stay(b, 24, -1, Standing.CONFIRMED), stay(a, 48, 24, Standing.READ));

        Device after = devices.find(ALL, device).orElseThrow();
        assertThat(DeviceDraft.of(after)).isEqualTo(DeviceDraft.of(before).ofModel(other));
        assertThat(history.spans(device, ago(48), ago(0)))
                .as("one unbroken history")
                .hasSize(3);
        double share = history.availability(device, ago(48), ago(0)).share().orElseThrow();
        assertThat(share).as("46 of 48 hours").isCloseTo(46.0 / 48, within(1e-9));
        eachUnitHasItsOwnPast();
    }

    private void eachUnitHasItsOwnPast() {
        UnitPast old = whole(a);
        UnitPast fresh = whole(b);
        assertThat(old.whereabouts()).isEqualTo("sent back");
        assertThat(fresh.whereabouts()).startsWith("stands at Pier AP of");
        assertThat(read(old).share().orElseThrow()).as("22 of 24 hours").isCloseTo(22.0 / 24, within(1e-9));
        assertThat(read(fresh).silent()).isZero();
        assertThat(fresh.unit().model()).isEqualTo("Tamarack Radio TR-33");
    }

    private UnitPast whole(String serial) {
        long id = units.find(ALL, place.customerId(), serial).orElseThrow().id();
        return units.whole(ALL, id).orElseThrow();
    }

    private static Availability read(UnitPast past) {
        return past.stays().get(0).read().orElseThrow().availability();
    }

    @Test
    void whatTheDeviceSaysAgainstTheAnnouncementIsShownAndNothingTakenForTrue() {
        says(48, a);
        fixture.follow();
        replacements.announce(ALL, draft(b, 10, Old.SCRAPPED));
        fixture.follow();
        assertThat(units.at(ALL, device).orElseThrow().contradicted())
                .as("not asked since")
                .isFalse();
        fixture.says(device, place.siteId(), clock.instant().plusSeconds(1), c);
        fixture.follow();
        Stay stay = units.at(ALL, device).orElseThrow();
        assertThat(stay.serial()).isEqualTo(b);
        assertThat(stay.instead()).isEqualTo(c);
        assertThat(stay.awaited()).isTrue();
        assertThat(refused(() -> replacements.announce(ALL, draft(c, 1, Old.SCRAPPED)))
                        .get(""))
                .contains("announced here already, serial number " + b);
        Stay accepted = replacements.accept(ALL, device);
        assertThat(accepted.serial()).isEqualTo(c);
        assertThat(stays()).containsExactly(stay(c, 10, -1, Standing.CONFIRMED), stay(a, 48, 10, Standing.READ));
        fixture.follow();
        assertThat(stays()).as("and nothing more follows").hasSize(2);
        assertThat(units.whole(
                                ALL,
                                units.find(ALL, place.customerId(), b)
                                        .orElseThrow()
                                        .id())
                        .orElseThrow()
                        .stays())
                .isEmpty();
    }

    @Test
    void anAnnouncementThatIsWithdrawnLeavesNoTraceButInTheAudit() {
        long model = fixture.model("TR-22");
        says(48, a);
        fixture.follow();
        StoreRoom room = rooms.add(ALL, null, "Van " + b, "");
        Spare spare = spares.add(ALL, new SpareDraft(b, model, room.id(), null, ""));
        replacements.announce(
                ALL, new ReplacementDraft(device, spare.id(), "", null, null, Old.SPARE, room.id(), null, "", null));
        assertThat(spares.find(ALL, spare.id()).orElseThrow().leftAt()).isPresent();
        assertThat(spares.usableBy(ALL, place.customerId()).stream()
                        .map(one -> one.unit().serial()))
                .as("the old unit lies there now")
                .doesNotContain(b);
        assertThat(units.whole(
                                ALL,
                                units.find(ALL, place.customerId(), b)
                                        .orElseThrow()
                                        .id())
                        .orElseThrow()
                        .whereabouts())
                .startsWith("stands at");
        replacements.withdraw(ALL, device);
        assertThat(stays()).containsExactly(stay(a, 48, -1, Standing.READ));
        assertThat(spares.find(ALL, spare.id()).orElseThrow().leftAt()).isEmpty();
        assertThat(spares.all(ALL).stream().map(one -> one.unit().serial()))
                .contains(b)
                .doesNotContain(a);
        assertThat(refused(() -> replacements.withdraw(ALL, device)).get(""))
                .startsWith("no replacement is announced here now");
        assertThat(tables.number("select count(*) from audit_entry where subject = 'unit in place' and subject_id = "
                        + device + " and action in ('replaced', 'withdrawn')"))
                .isEqualTo(2);
    }

    @Test
    void aUnitThatTheDeviceToldOfFirstIsConfirmedAtTheTimeThatAPersonGives() {
        says(48, a);
        fixture.follow();
        says(5, b);
        fixture.follow();
        Stay stay = replacements.announce(ALL, draft(b, 8, Old.SCRAPPED));
        assertThat(stay.standing()).isEqualTo(Standing.CONFIRMED);
        assertThat(stays()).containsExactly(stay(b, 8, -1, Standing.CONFIRMED), stay(a, 48, 8, Standing.READ));
        assertThat(refused(() -> replacements.announce(ALL, draft(a, 1, Old.SCRAPPED)))
                        .get("serial"))
                .isEqualTo("this unit was scrapped");
    }

    @Test
    void purchasesFollowTheirUnits() {
        for (String serial : List.of(a, b)) {
            tables.tell("insert into purchase (customer_id, serial) values (" + place.customerId() + ", ?)", serial);
        }
        tables.tell("update purchase set device_id = " + device + " where serial = ?", a);
        says(48, a);
        fixture.follow();
        replacements.announce(ALL, draft(b, 1, Old.SENT_BACK));
        assertThat(tables.number(
                        "select count(*) from purchase where device_id = " + device + " and serial = '" + b + "'"))
                .isEqualTo(1);
        assertThat(tables.number("select count(*) from purchase where device_id is null and serial = '" + a + "'"))
                .isEqualTo(1);
    }

    @Test
    void faultsOfAReplacementAreToldByField() {
        says(48, a);
        fixture.follow();
        long second = fleet.device(place.siteId(), place.credentialId(), "second", "127.99.0.9", 16_099);
        fixture.says(second, place.siteId(), ago(30), b);
        fixture.follow();
        assertThat(refused(() -> replacements.announce(ALL, draft(b, 1, Old.SCRAPPED)))
                        .get("serial"))
                .startsWith("this unit stands at second");
        assertThat(refused(() -> replacements.announce(ALL, draft(c, -2, Old.SCRAPPED))))
                .containsKey("at");
        assertThat(refused(() -> replacements.announce(ALL, draft(c, 60, Old.SCRAPPED))))
                .containsKey("at");
        assertThat(refused(() -> replacements.announce(ALL, draft(c, 1, Old.SPARE))))
                .containsKey("where");
        assertThat(refused(() -> replacements.announce(ALL, draft("", 1, Old.SCRAPPED))))
                .containsKey("serial");
        assertThat(refused(() -> replacements.announce(CustomerScope.of(1), draft(c, 1, Old.SCRAPPED))))
                .containsKey("id");
        ReplacementDraft both = new ReplacementDraft(device, 1L, c, null, null, Old.SCRAPPED, null, null, "", null);
        assertThat(refused(() -> replacements.announce(ALL, both))).containsKey("serial");
        assertThat(stays()).as("nothing was changed").containsExactly(stay(a, 48, -1, Standing.READ));
    }

    private long audited(Spare spare, String what) {
        return tables.number("select count(*) from audit_entry where subject = 'spare' and action = 'changed'"
                + " and subject_id = " + spare.id() + " and customer_id = " + place.customerId()
                + " and changes::text like '%" + what + "%'");
    }

    @Test
    void aSpareThatComesToStandSomewhereLeavesAnEntryInTheAudit() {
        StoreRoom room = rooms.add(ALL, null, "Van " + b, "");
        Spare spare = spares.add(ALL, new SpareDraft(b, null, room.id(), null, ""));
        says(48, a);
        fixture.follow();
        replacements.announce(
                ALL, new ReplacementDraft(device, spare.id(), "", null, null, Old.SCRAPPED, null, null, "", null));
        assertThat(audited(spare, "put in the place of another unit")).isEqualTo(1);
        assertThat(audited(spare, "device " + device)).as("with the place").isEqualTo(1);
        replacements.withdraw(ALL, device);
        assertThat(tables.number("select count(*) from audit_entry where subject = 'spare' and subject_id = "
                        + spare.id() + " and action = 'changed'"))
                .as("and of coming back")
                .isEqualTo(2);
        says(1, b);
        fixture.follow();
        assertThat(spares.find(ALL, spare.id()).orElseThrow().leftAt()).isPresent();
        assertThat(audited(spare, "it stands in a place"))
                .as("as a device says")
                .isEqualTo(1);
    }

    /** As at the first start, which begins the stays of many devices in one go. */
    @Test
    void aSpareAmongManyNewDevicesLeavesTheStoreToo() {
        Spare spare = spares.add(ALL, new SpareDraft(a, null, null, place.siteId(), ""));
        says(1, a);
        new FollowTable(database).beginAll();
        fixture.follow();
        assertThat(stays()).containsExactly(stay(a, 1, -1, Standing.READ));
        assertThat(spares.find(ALL, spare.id()).orElseThrow().leftAt()).isPresent();
        assertThat(audited(spare, "it stands in a place")).isEqualTo(1);
    }

    @Test
    void sparesAreListedPageByPage() {
        StoreRoom room = rooms.add(ALL, place.customerId(), "Cellar", "");
        for (String serial : List.of(a, b, c)) {
            spares.add(ALL, new SpareDraft(serial, null, room.id(), null, ""));
        }
        CustomerScope own = CustomerScope.of(place.customerId());
        Page<Spare> first = spares.page(own, 1, 2);
        Page<Spare> last = spares.page(own, 9, 2);
        assertThat(first.items()).hasSize(2);
        assertThat(first.total()).isEqualTo(3);
        assertThat(last.number()).isEqualTo(2);
        assertThat(Stream.concat(first.items().stream(), last.items().stream()).toList())
                .isEqualTo(spares.all(own));
        assertThat(spares.page(CustomerScope.of(place.customerId() + 1_000_000), 1, 2)
                        .items())
                .isEmpty();
    }

    @Test
    void sparesAreCountedAgainstWhatARoomShouldHold() {
        long model = fixture.model("TR-22");
        StoreRoom room = rooms.add(ALL, place.customerId(), "Cellar", "");
        rooms.wish(ALL, room.id(), model, 2);
        Spare spare = spares.add(ALL, new SpareDraft(a, model, room.id(), null, "boxed"));
        assertThat(short_(room)).isEqualTo(1);
        spares.add(ALL, new SpareDraft(b, model, room.id(), null, ""));
        assertThat(short_(room)).isZero();
        Spare moved = spares.move(ALL, spare.id(), null, place.siteId());
        assertThat(moved.siteId()).hasValue(place.siteId());
        assertThat(short_(room)).isEqualTo(1);
        assertThat(refused(() -> spares.add(ALL, new SpareDraft(a.toLowerCase(), null, room.id(), null, "")))
                        .get("serial"))
                .contains("lies in store already");
        CustomerScope stranger = CustomerScope.of(place.customerId() + 1_000_000);
        assertThat(spares.all(stranger)).isEmpty();
        assertThat(refused(() -> spares.takeAway(stranger, moved.id(), Optional.empty(), "x")))
                .containsKey("id");
        spares.takeAway(ALL, moved.id(), Optional.of(Fate.SCRAPPED), "fell");
        assertThat(units.find(ALL, place.customerId(), a).orElseThrow().fate()).hasValue(Fate.SCRAPPED);
        assertThat(refused(() -> rooms.remove(ALL, room.id())).get("id")).contains("history names the room");
    }

    private int short_(StoreRoom room) {
        return rooms.counts(ALL).stream()
                .filter(one -> one.roomId() == room.id())
                .mapToInt(Shortage::missing)
                .sum();
    }
}
