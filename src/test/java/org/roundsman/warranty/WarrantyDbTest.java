package org.roundsman.warranty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.Set;
import java.util.function.Supplier;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.alarms.AlarmBook;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.InputRejected;
import org.roundsman.fleet.PurchaseDraft;
import org.roundsman.people.Role;
import org.roundsman.people.SignedIn;
import org.roundsman.rules.RuleBook;
import org.roundsman.rules.RuleField;
import org.roundsman.rules.RuleLevel;
import org.roundsman.web.FleetFixture;
import org.roundsman.web.MarkedPlaces;

/** Purchases, contracts, evidence, calendars and alarms of warranty in the running service. */
@QuarkusTest
class WarrantyDbTest {

    private static final CustomerScope ALL = CustomerScope.everyone();
    private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");
    private static final byte[] PDF = "%PDF-1.7 an invented invoice".getBytes(StandardCharsets.US_ASCII);

    @Inject
    FleetFixture fixture;

    @Inject
    MarkedPlaces places;

    @Inject
    Warranties warranties;

    @Inject
    Purchases purchases;

    @Inject
    Contracts contracts;

    @Inject
    Evidences evidences;

    @Inject
    CalendarAddresses addresses;

    @Inject
    CalendarFeed feed;

    @Inject
    CoverAlarms alarms;

    @Inject
    AlarmBook book;

    @Inject
    RuleBook rules;

    @Inject
    Clock clock;

    private FleetFixture.Place place;
    private CustomerScope other;
    private LocalDate today;

    /** An access point of a model with 12 months from purchase, whose serial number was read. */
    @BeforeEach
    void aPlace() {
        place = fixture.place("Saltmarsh");
        other = CustomerScope.of(fixture.place("Quillfeather").customerId());
        today = LocalDate.ofInstant(clock.instant(), BERLIN);
        places.tell("insert into model (maker, name, kind, list_price, currency, terms_kind, terms_from, terms_months)"
                + " values ('Tamarack Radio', 'W-" + place.deviceId() + "', 'ACCESS_POINT', 189.90, 'EUR', 'MONTHS',"
                + " 'PURCHASE', 12)");
        places.tell("update device set model_id = (select max(id) from model) where id = " + place.deviceId());
        places.tell(
                "insert into device_fact (device_id, fact, value, since) values (" + place.deviceId()
                        + ", 'SERIAL', ?, now())",
                serial());
    }

    private String serial() {
        return "SN-" + place.deviceId();
    }

    private PurchaseDraft draft(String serial, Long site, Long device, LocalDate bought) {
        return new PurchaseDraft(serial, site, device, "Fernhollow", "O-1", "R-1", bought, null, null, null, "", "");
    }

    private Purchase bought(LocalDate day) {
        return purchases.add(ALL, place.customerId(), OptionalLong.empty(), draft(serial(), null, null, day));
    }

    private UnitCover cover() {
        return warranties.ofDevice(ALL, place.deviceId()).orElseThrow();
    }

    private long noted(String subject, String action) {
        return places.number("select count(*) from audit_entry where subject = '" + subject + "' and action = '"
                + action + "' and customer_id = " + place.customerId());
    }

    private static Map<String, String> refused(Runnable work) {
        InputRejected e = catchThrowableOfType(InputRejected.class, work::run);
        assertThat(e).as("nothing was refused").isNotNull();
        return e.faults();
    }

    @Test
    void aPurchaseIsFoundBySerialNumberWithoutRegardToCase() {
        assertThat(cover().status()).isEqualTo(CoverStatus.MISSING);
        Purchase made = purchases.add(
                ALL,
                place.customerId(),
                OptionalLong.empty(),
                draft(serial().toLowerCase(java.util.Locale.ROOT), null, null, today.minusMonths(6)));
        assertThat(cover().purchaseId()).hasValue(made.id());
        assertThat(cover().lastDay()).contains(today.minusMonths(6).plusMonths(12));
        assertThat(warranties.ofPurchase(ALL, made.id()).orElseThrow()).isEqualTo(cover());
        assertThat(warranties.with(ALL, EnumSet.of(CoverStatus.MISSING))).doesNotContain(place.deviceId());
        assertThat(noted("purchase", "added")).isEqualTo(1);
        purchases.change(
                ALL, made.id(), OptionalLong.empty(), draft(serial(), place.siteId(), place.deviceId(), today));
        assertThat(noted("purchase", "changed")).isEqualTo(1);
        assertThat(cover().lastDay()).contains(today.plusMonths(12));
    }

    @Test
    void whatCannotBeIsRefusedByField() {
        bought(today);
        assertThat(refused(() -> bought(today))).containsOnlyKeys("serial");
        FleetFixture.Place elsewhere = fixture.place("Thistledown");
        assertThat(refused(() -> purchases.add(
                        ALL,
                        place.customerId(),
                        OptionalLong.of(999_999_999),
                        draft("X-1", elsewhere.siteId(), elsewhere.deviceId(), null))))
                .containsOnlyKeys("siteId", "deviceId", "model");
        assertThat(refused(() -> purchases.add(
                        ALL, place.customerId(), OptionalLong.empty(), draft("X-1", null, place.deviceId(), null))))
                .containsOnlyKeys("deviceId");
        assertThat(refused(() -> purchases.add(
                        ALL,
                        place.customerId(),
                        OptionalLong.empty(),
                        draft("X-1", null, null, today.plusYears(1).plusDays(2)))))
                .containsOnlyKeys("boughtOn");
        assertThat(refused(() ->
                        purchases.add(other, place.customerId(), OptionalLong.empty(), draft("X-1", null, null, null))))
                .containsOnlyKeys("id");
    }

    @Test
    void aPurchaseThatStandsAtNoDeviceIsAUnitOfItsOwn() {
        Purchase spare = purchases.add(
                ALL,
                place.customerId(),
                OptionalLong.of(places.number("select model_id from device where id = " + place.deviceId())),
                draft("SPARE-" + place.deviceId(), null, null, today.minusMonths(13)));
        UnitCover cover = warranties.ofPurchase(ALL, spare.id()).orElseThrow();
        assertThat(cover.deviceId()).isEmpty();
        assertThat(cover.status()).isEqualTo(CoverStatus.ENDED);
        assertThat(warranties.all(CustomerScope.of(place.customerId())))
                .hasSize(2)
                .contains(cover);
    }

    @Test
    void nobodySeesUnitsOfAnotherCustomer() {
        Purchase made = bought(today);
        assertThat(warranties.ofDevice(other, place.deviceId())).isEmpty();
        assertThat(warranties.ofPurchase(other, made.id())).isEmpty();
        assertThat(warranties.all(other)).noneMatch(one -> one.customerId() == place.customerId());
        assertThat(purchases.find(other, made.id())).isEmpty();
        assertThat(evidences.list(other, made.id())).isEmpty();
    }

    @Test
    void aContractCoversKnownUnitsAndNamesTheOthers() {
        ContractDraft draft =
                new ContractDraft("C-" + place.siteId(), "Fernhollow", "ADVANCE", today, today.plusYears(2), "");
        Contract made = contracts.add(ALL, place.customerId(), draft);
        Contracts.Covered first =
                contracts.cover(ALL, made.id(), List.of(" " + serial().toLowerCase(java.util.Locale.ROOT), "NOBODY-1"));
        assertThat(first).isEqualTo(new Contracts.Covered(1, 0, Map.of(), List.of("NOBODY-1")));
        assertThat(cover().lastDay()).contains(today.plusYears(2));
        assertThat(contracts.of(cover())).extracting(Contract::id).containsExactly(made.id());
        assertThat(contracts.cover(ALL, made.id(), CoverSearch.everything()).already())
                .isEqualTo(1);
        assertThat(refused(() -> contracts.add(ALL, place.customerId(), draft))).containsOnlyKeys("number");
        assertThat(refused(() -> contracts.change(other, made.id(), draft))).containsOnlyKeys("id");
        assertThat(refused(() ->
                        contracts.add(ALL, 999_999_999, new ContractDraft("", "", "X", today, today.minusDays(1), ""))))
                .containsOnlyKeys("number", "service", "to", "customer");
        assertThat(contracts.uncover(ALL, made.id(), List.of(serial()))).isEqualTo(1);
        assertThat(cover().status()).isEqualTo(CoverStatus.MISSING);
        contracts.remove(ALL, made.id());
        assertThat(contracts.find(ALL, made.id())).isEmpty();
        for (String action : List.of("added", "covered units", "covers units no more", "removed")) {
            assertThat(noted("contract", action)).as(action).isEqualTo(1);
        }
    }

    @Test
    void aContractSaysWhatBecameOfUnitsThatLeftForGood() {
        String gone = "GONE-" + place.deviceId();
        purchases.add(ALL, place.customerId(), OptionalLong.empty(), draft(gone, null, null, today));
        ContractDraft draft = new ContractDraft("G-" + place.siteId(), "", "", today, today.plusYears(2), "");
        long contract = contracts.add(ALL, place.customerId(), draft).id();
        assertThat(contracts.cover(ALL, contract, List.of(gone)).added()).isEqualTo(1);
        assertThat(contracts.left(ALL, contract)).isEmpty();
        places.tell(
                "insert into unit (customer_id, serial, fate, fate_since, known_since) values (" + place.customerId()
                        + ", ?, 'SENT_BACK', now(), now())",
                gone);
        assertThat(contracts.left(ALL, contract))
                .isEqualTo(Map.of(gone.toLowerCase(java.util.Locale.ROOT), "sent back"));
        assertThat(contracts.left(other, contract)).isEmpty();
        assertThat(contracts.cover(ALL, contract, List.of(gone, "NOBODY-2")))
                .isEqualTo(new Contracts.Covered(0, 0, Map.of(gone, "sent back"), List.of("NOBODY-2")));
    }

    @Test
    void aContractFollowsACorrectedSerialNumberUnlessADeviceTellsTheOldOne() {
        OptionalLong none = OptionalLong.empty();
        String wrong = "SLIP-" + place.deviceId();
        Purchase made = purchases.add(ALL, place.customerId(), none, draft(wrong, null, null, today));
        ContractDraft draft = new ContractDraft("R-" + place.siteId(), "", "", today, today.plusYears(2), "");
        long contract = contracts.add(ALL, place.customerId(), draft).id();
        contracts.cover(ALL, contract, List.of(wrong));
        purchases.change(ALL, made.id(), none, draft(serial(), null, null, today));
        assertThat(contracts.serials(ALL, contract)).containsExactly(serial());
        assertThat(cover().lastDay()).contains(today.plusYears(2));
        assertThat(noted("contract", "changed")).isEqualTo(1);
        purchases.change(ALL, made.id(), none, draft(wrong, null, null, today));
        assertThat(contracts.serials(ALL, contract)).as("the device keeps it").containsExactly(serial());
        assertThat(noted("contract", "changed")).isEqualTo(1);
    }

    @Test
    void evidenceIsKeptOnceAndBounded() {
        Purchase made = bought(today);
        Evidence first = evidences.attach(ALL, made.id(), "../Rechnung 7.exe", PDF);
        assertThat(first.name()).isEqualTo("Rechnung 7.pdf");
        assertThat(evidences.read(ALL, first.id()).orElseThrow().content()).isEqualTo(PDF);
        assertThat(evidences.read(other, first.id())).isEmpty();
        assertThat(refused(() -> evidences.attach(ALL, made.id(), "again.pdf", PDF))
                        .get("file"))
                .contains("Rechnung 7.pdf");
        assertThat(refused(() -> evidences.attach(ALL, made.id(), "x.pdf", "<html>".getBytes(StandardCharsets.UTF_8))))
                .containsOnlyKeys("file");
        byte[] large = new byte[Evidences.LARGEST + 1];
        System.arraycopy(PDF, 0, large, 0, PDF.length);
        assertThat(refused(() -> evidences.attach(ALL, made.id(), "x.pdf", large))
                        .get("file"))
                .contains("5 MB");
        assertThat(refused(() -> evidences.attach(other, made.id(), "x.pdf", PDF)))
                .containsOnlyKeys("id");
        for (int n = 1; n < Evidences.MOST_OF_ONE; n++) {
            evidences.attach(ALL, made.id(), n + ".pdf", ("%PDF-1.7 " + n).getBytes(StandardCharsets.US_ASCII));
        }
        assertThat(refused(() -> evidences.attach(ALL, made.id(), "x.pdf", "%PDF-x".getBytes(StandardCharsets.UTF_8)))
                        .get("file"))
                .contains("20 files");
        assertThat(evidences.remove(other, first.id())).isEmpty();
        assertThat(evidences.remove(ALL, first.id())).map(Purchase::id).contains(made.id());
        assertThat(noted("purchase", "attached evidence")).isEqualTo(Evidences.MOST_OF_ONE);
        assertThat(noted("purchase", "removed evidence")).isEqualTo(1);
    }

    @Test
    void aCalendarAddressDiesWithItsAccountAndStaysDead() {
        SignedIn person = places.somebody(Role.TECHNICIAN, null);
        Supplier<String> fresh = () -> addresses.add(
                ALL, person.accountId(), "phone " + System.nanoTime(), OptionalLong.of(place.customerId()));
        String secret = fresh.get();
        String kept = fresh.get();
        assertThat(feed.read(secret)).isPresent();
        assertThat(feed.read(secret + "x")).isEmpty();
        assertThat(addresses.of(person.accountId()))
                .anyMatch(one -> one.usedAt().isPresent());
        places.tell("update account set disabled = true where id = " + person.accountId());
        assertThat(feed.read(secret)).isEmpty();
        addresses.endOfLostRights();
        places.tell("update account set disabled = false where id = " + person.accountId());
        assertThat(feed.read(kept)).as("ended for good").isEmpty();
        assertThat(noted("calendar address", "revoked")).isEqualTo(2);
        String third = fresh.get();
        places.tell("update account set role = 'VIEWER', customer_id = " + place.customerId() + " where id = "
                + person.accountId());
        assertThat(feed.read(third)).as("a customer's person").isEmpty();
        assertThat(refused(fresh::get)).containsOnlyKeys("");
    }

    @Test
    void aPersonHoldsSoManyAddressesAndEndsTheirOwn() {
        SignedIn person = places.somebody(Role.ACCOUNT_MANAGER, null);
        addresses.add(ALL, person.accountId(), "phone", OptionalLong.empty());
        assertThat(refused(() -> addresses.add(ALL, person.accountId(), "Phone", OptionalLong.empty())))
                .containsOnlyKeys("name");
        assertThat(refused(() -> addresses.add(ALL, person.accountId(), " ", OptionalLong.empty())))
                .containsOnlyKeys("name");
        assertThat(refused(() -> addresses.add(ALL, person.accountId(), "x", OptionalLong.of(999_999_999))))
                .containsOnlyKeys("customer");
        for (int n = 2; n <= 10; n++) {
            addresses.add(ALL, person.accountId(), "n" + n, OptionalLong.empty());
        }
        assertThat(refused(() -> addresses.add(ALL, person.accountId(), "one more", OptionalLong.empty())))
                .containsOnlyKeys("");
        long one = addresses.of(person.accountId()).get(0).id();
        SignedIn stranger = places.somebody(Role.TECHNICIAN, null);
        assertThat(addresses.revoke(stranger.accountId(), false, one)).isFalse();
        assertThat(addresses.revoke(person.accountId(), false, one)).isTrue();
        assertThat(addresses.of(person.accountId()).get(0).good()).isFalse();
    }

    @Test
    void theAlarmComesOnceFollowsAndClears() {
        Purchase made = bought(today.plusDays(10).minusMonths(12));
        LocalDate last = cover().lastDay().orElseThrow();
        alarms.look();
        OpenAlarm alarm = alarm().orElseThrow();
        assertThat(alarm.text()).isEqualTo("1 access point on " + last);
        alarms.look();
        assertThat(alarm().orElseThrow().episodeId())
                .as("nothing is raised twice")
                .isEqualTo(alarm.episodeId());
        assertThat(book.changes(ALL, alarm.id())).hasSize(1);
        rules.save(
                ALL,
                new RuleBook.Wish(
                        AlarmType.COVER_ENDING,
                        RuleLevel.SITE,
                        place.siteId(),
                        Map.of(RuleField.ENABLED, "no"),
                        "not here"),
                0);
        alarms.look();
        assertThat(alarm()).as("the rule is off").isEmpty();
        rules.overrides(ALL, AlarmType.COVER_ENDING).stream()
                .filter(one -> one.targetId() == place.siteId())
                .forEach(one -> rules.remove(ALL, one.id(), one.version()));
        alarms.look();
        assertThat(alarm()).isPresent();
        purchases.change(ALL, made.id(), OptionalLong.empty(), draft(serial(), null, null, today));
        alarms.look();
        assertThat(alarm()).isEmpty();
    }

    private java.util.Optional<OpenAlarm> alarm() {
        return book.ofSite(ALL, place.siteId()).stream()
                .filter(OpenAlarm::active)
                .filter(one -> one.key().type() == AlarmType.COVER_ENDING)
                .filter(one ->
                        Set.of(place.siteId()).contains(one.key().resource().id()))
                .findFirst();
    }
}
