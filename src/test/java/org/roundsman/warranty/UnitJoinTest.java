package org.roundsman.warranty;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.roundsman.warranty.store.ContractTable.Key;

/** Which purchase is whose. */
class UnitJoinTest {

    private static Unit device(long id, String serial) {
        Unit plain = Invented.unit(id, 5, "AP " + id, null, null, "2026-01-01");
        return new Unit(
                plain.deviceId(),
                plain.kind(),
                plain.customerId(),
                plain.customer(),
                plain.siteId(),
                plain.site(),
                plain.zone(),
                plain.name(),
                plain.place(),
                serial,
                Optional.empty(),
                plain.firstSeen(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    private static Purchase bought(long id, String serial, Long device) {
        return Invented.purchase(id, serial, device, "2026-01-01", null, null);
    }

    @Test
    void theSerialNumberCountsBeforeTheDeviceThatIsNamed() {
        UnitJoin join = new UnitJoin(List.of(bought(1, "OLD", 11L), bought(2, "new", null)), Map.of(), Map.of());
        Unit joined = join.devices(List.of(device(11, "NEW"))).get(0);
        assertThat(joined.purchase()).map(Purchase::id).contains(2L);
        assertThat(joined.serial()).isEqualTo("NEW");
        assertThat(joined.stranger()).isEmpty();
        assertThat(join.others())
                .as("the old unit stays one of its own")
                .extracting(Unit::serial)
                .containsExactly("OLD");
    }

    @Test
    void whereTheDeviceTellsNoneTheLatestThatNamesItCounts() {
        UnitJoin join = new UnitJoin(List.of(bought(1, "A", 11L), bought(2, "B", 11L)), Map.of(), Map.of());
        Unit joined = join.devices(List.of(device(11, ""))).get(0);
        assertThat(joined.purchase()).map(Purchase::id).contains(2L);
        assertThat(joined.serial()).isEqualTo("B");
        assertThat(join.others()).extracting(Unit::serial).containsExactly("A");
    }

    @Test
    void aPurchaseOfAnotherNumberIsAStranger() {
        UnitJoin join = new UnitJoin(List.of(bought(1, "A", 11L)), Map.of(), Map.of());
        Unit joined = join.devices(List.of(device(11, "B"))).get(0);
        assertThat(joined.purchase()).isEmpty();
        assertThat(joined.stranger()).map(Purchase::serial).contains("A");
        assertThat(join.others()).hasSize(1);
    }

    private static KnownUnit known(OptionalLong model, String fate) {
        Optional<Instant> since =
                fate.isEmpty() ? Optional.empty() : Optional.of(Instant.parse("2026-11-01T12:00:00Z"));
        return new KnownUnit(model, fate, Optional.of(Instant.parse("2025-03-01T12:00:00Z")), since);
    }

    @Test
    void aUnitThatStandsNowhereKeepsItsModelAndItsFirstDay() {
        UnitModel model = Invented.model(null);
        Map<Key, KnownUnit> known = Map.of(Key.of(3, "spare"), known(OptionalLong.of(7), ""));
        Unit other = new UnitJoin(List.of(bought(1, "SPARE", null)), Map.of(7L, model), known)
                .others()
                .get(0);
        assertThat(other.model()).contains(model);
        assertThat(other.firstSeen()).contains(LocalDate.parse("2025-03-01"));
        assertThat(other.fate()).isEmpty();
    }

    @Test
    void aUnitThatWasScrappedStandsAtNoDeviceThatTellsNothing() {
        Map<Key, KnownUnit> known = Map.of(Key.of(3, "b"), known(OptionalLong.empty(), "scrapped"));
        UnitJoin join = new UnitJoin(List.of(bought(1, "A", 11L), bought(2, "B", 11L)), Map.of(), known);
        Unit joined = join.devices(List.of(device(11, ""))).get(0);
        assertThat(joined.purchase()).map(Purchase::id).contains(1L);
        Unit gone = join.others().get(0);
        assertThat(gone.fate()).contains(new UnitFate("scrapped", LocalDate.parse("2026-11-01")));
        assertThat(TermsCover.of(gone).steps())
                .contains(CoverStep.note("the unit was scrapped on 2026-11-01: it is left out of lists and sums"));
    }
}
