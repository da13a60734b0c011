package org.roundsman.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.Severity;
import org.roundsman.audit.AuditEntry;
import org.roundsman.audit.AuditLog;
import org.roundsman.audit.AuditQuery;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.Devices;
import org.roundsman.fleet.InputRejected;
import org.roundsman.web.FleetFixture;

@QuarkusTest
class RuleBookDbTest {

    private static final AlarmType BUSY = AlarmType.UTILISATION_HIGH;
    private static final CustomerScope EVERYONE = CustomerScope.everyone();

    @Inject
    RuleBook book;

    @Inject
    RuleTargets targets;

    @Inject
    FleetFixture fixture;

    @Inject
    Devices devices;

    @Inject
    AuditLog audit;

    private FleetFixture.Place place;

    @BeforeEach
    void aPlace() {
        place = fixture.place("Orrin");
    }

    @AfterEach
    void nothingStaysSet() {
        book.overrides(EVERYONE).forEach(one -> book.remove(EVERYONE, one.id(), one.version()));
    }

    private RuleBook.Wish wish(RuleLevel level, long target, Map<RuleField, String> fields) {
        return new RuleBook.Wish(BUSY, level, target, fields, "the hall is full every evening");
    }

    private double major() {
        return book.current()
                .of(BUSY, targets.ofDevice(EVERYONE, place.deviceId()).orElseThrow())
                .level(Severity.MAJOR)
                .orElse(Double.NaN);
    }

    private static Map<String, String> refused(Runnable work) {
        return catchThrowableOfType(InputRejected.class, work::run).faults();
    }

    @Test
    void valuesHoldAtOnceAndGoAgain() {
        RuleOverride site =
                book.save(EVERYONE, wish(RuleLevel.SITE, place.siteId(), Map.of(RuleField.MAJOR, "92,50")), 0);
        assertThat(site.fields()).isEqualTo(Map.of(RuleField.MAJOR, "92.5"));
        assertThat(site.customerId()).isEqualTo(place.customerId());
        assertThat(site.targetName()).contains(place.customer());
        assertThat(major()).isEqualTo(92.5);
        book.save(EVERYONE, wish(RuleLevel.DEVICE, place.deviceId(), Map.of(RuleField.MAJOR, "97")), 0);
        assertThat(major()).isEqualTo(97);
        book.remove(EVERYONE, site.id(), 1);
        assertThat(major()).isEqualTo(97);
        devices.remove(place.deviceId());
        assertThat(book.overrides(EVERYONE, BUSY))
                .as("with the device its values go")
                .noneMatch(one -> one.targetId() == place.deviceId());
    }

    @Test
    void whoeverSawAnOlderVersionSavesNothing() {
        RuleBook.Wish first = wish(RuleLevel.SITE, place.siteId(), Map.of(RuleField.MAJOR, "90"));
        RuleOverride one = book.save(EVERYONE, first, 0);
        assertThat(refused(() -> book.save(EVERYONE, first, 0))).containsOnlyKeys("basedOn");
        RuleOverride two =
                book.save(EVERYONE, wish(RuleLevel.SITE, place.siteId(), Map.of(RuleField.MAJOR, "91")), one.version());
        assertThat(two.version()).isEqualTo(2);
        assertThat(refused(() -> book.save(EVERYONE, first, 1)).get("basedOn")).contains("version 2");
        assertThat(refused(() -> book.remove(EVERYONE, one.id(), 1))).containsOnlyKeys("basedOn");
        assertThat(major()).isEqualTo(91);
    }

    @Test
    void everyChangeIsNotedFieldByField() {
        RuleOverride one = book.save(EVERYONE, wish(RuleLevel.SITE, place.siteId(), Map.of(RuleField.MAJOR, "90")), 0);
        book.save(EVERYONE, wish(RuleLevel.SITE, place.siteId(), Map.of(RuleField.ENABLED, "no")), 1);
        book.remove(EVERYONE, one.id(), 2);
        List<AuditEntry> entries = audit.find(
                new AuditQuery("", "", "rule", one.id(), place.customerId(), "", null, null), Optional.empty(), 10);
        assertThat(entries).extracting(AuditEntry::action).containsExactly("removed", "changed", "added");
        assertThat(entries.get(1).changes())
                .contains(
                        new AuditEntry.FieldChange("major", "90", ""), new AuditEntry.FieldChange("enabled", "", "no"));
        assertThat(entries.get(0).subject().name())
                .startsWith("Channel busy, site ")
                .contains(place.customer());
    }

    @Test
    void whatCannotBeTakenIsSaidByField() {
        assertThat(refused(() -> book.save(EVERYONE, wish(RuleLevel.ALL, 0, Map.of(RuleField.CLEAR, "99")), 0)))
                .containsOnlyKeys("clear");
        assertThat(refused(() -> book.save(EVERYONE, wish(RuleLevel.ALL, 0, Map.of()), 0)))
                .containsOnlyKeys("fields");
        RuleBook.Wish silent = new RuleBook.Wish(BUSY, RuleLevel.ALL, 0, Map.of(RuleField.MAJOR, "90"), " ");
        assertThat(refused(() -> book.save(EVERYONE, silent, 0))).containsOnlyKeys("reason");
        RuleBook.Wish disk = new RuleBook.Wish(
                AlarmType.DISK_FILLING, RuleLevel.SITE, place.siteId(), Map.of(RuleField.MAJOR, "96"), "why");
        assertThat(refused(() -> book.save(EVERYONE, disk, 0))).containsOnlyKeys("level");
        assertThat(refused(
                        () -> book.save(EVERYONE, wish(RuleLevel.SITE, 999_999_999, Map.of(RuleField.MAJOR, "90")), 0)))
                .containsOnlyKeys("targetId");
    }

    @Test
    void nobodySetsOrSeesWhatIsAnotherCustomers() {
        long other = fixture.place("Brackwater").customerId();
        CustomerScope theirs = CustomerScope.of(other);
        RuleBook.Wish wish = wish(RuleLevel.SITE, place.siteId(), Map.of(RuleField.MAJOR, "90"));
        assertThat(refused(() -> book.save(theirs, wish, 0))).containsOnlyKeys("targetId");
        assertThat(refused(() -> book.save(theirs, wish(RuleLevel.ALL, 0, Map.of(RuleField.MAJOR, "90")), 0)))
                .containsOnlyKeys("targetId");
        RuleOverride one = book.save(EVERYONE, wish, 0);
        assertThat(book.find(theirs, one.id())).isEmpty();
        assertThat(book.overrides(theirs)).isEmpty();
        assertThat(refused(() -> book.remove(theirs, one.id(), 1))).containsOnlyKeys("id");
        assertThat(targets.search(theirs, place.customer(), 10)).isEmpty();
        assertThat(targets.search(EVERYONE, place.customer(), 10))
                .extracting(RuleTargets.Found::level)
                .containsExactly(RuleLevel.CUSTOMER, RuleLevel.SITE, RuleLevel.DEVICE);
    }
}
