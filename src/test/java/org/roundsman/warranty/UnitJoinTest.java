package org.roundsman.warranty;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

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
                Optional.empty());
    }

    private static Purchase bought(long id, String serial, Long device) {
        return Invented.purchase(id, serial, device, "2026-01-01", null, null);
    }

    @Test
    void theSerialNumberCountsBeforeTheDeviceThatIsNamed() {
        UnitJoin join = new UnitJoin(List.of(bought(1, "OLD", 11L), bought(2, "new", null)), Map.of());
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
        UnitJoin join = new UnitJoin(List.of(bought(1, "A", 11L), bought(2, "B", 11L)), Map.of());
        Unit joined = join.devices(List.of(device(11, ""))).get(0);
        assertThat(joined.purchase()).map(Purchase::id).contains(2L);
        assertThat(joined.serial()).isEqualTo("B");
        assertThat(join.others()).extracting(Unit::serial).containsExactly("A");
    }

    @Test
    void aPurchaseOfAnotherNumberIsAStranger() {
        UnitJoin join = new UnitJoin(List.of(bought(1, "A", 11L)), Map.of());
        Unit joined = join.devices(List.of(device(11, "B"))).get(0);
        assertThat(joined.purchase()).isEmpty();
        assertThat(joined.stranger()).map(Purchase::serial).contains("A");
        assertThat(join.others()).hasSize(1);
    }
}
