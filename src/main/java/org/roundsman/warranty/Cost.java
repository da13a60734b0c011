package org.roundsman.warranty;

import java.math.BigDecimal;
import java.util.Collection;
import java.util.Collections;
import java.util.SortedMap;
import java.util.TreeMap;
import org.roundsman.fleet.PurchaseDraft;

/**
 * What it costs to replace units at list price, without tax. Currencies are never added up together.
 *
 * @param units how many there are
 * @param sums by ISO 4217 code, of those that have a price
 * @param unpriced how many have none
 */
public record Cost(int units, SortedMap<String, BigDecimal> sums, int unpriced) {

    public static final Cost NOTHING = new Cost(0, Collections.emptySortedMap(), 0);

    public Cost {
        sums = Collections.unmodifiableSortedMap(new TreeMap<>(sums));
    }

    public static Cost of(Collection<UnitCover> units) {
        SortedMap<String, BigDecimal> sums = new TreeMap<>();
        int unpriced = 0;
        for (UnitCover cover : units) {
            UnitModel model = cover.unit().model().orElse(null);
            if (model == null || model.listPrice().isEmpty()) {
                unpriced++;
            } else {
                sums.merge(model.currency(), model.listPrice().get(), BigDecimal::add);
            }
        }
        sums.replaceAll((currency, sum) -> PurchaseDraft.usual(sum, currency));
        return new Cost(units.size(), sums, unpriced);
    }
}
