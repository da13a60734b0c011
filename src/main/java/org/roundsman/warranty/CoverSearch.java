package org.roundsman.warranty;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;

/**
 * Which units are wanted.
 *
 * @param model 0 for units whose model is not known
 * @param month only cover that ends in that month, today or later
 * @param statuses empty for all
 * @param pastSupport only units whose maker gives no help any more
 * @param words each must occur in name, serial number, place, site, customer or model
 */
public record CoverSearch(
        OptionalLong customer,
        OptionalLong site,
        OptionalLong model,
        Optional<YearMonth> month,
        Set<CoverStatus> statuses,
        boolean pastSupport,
        String words) {

    public CoverSearch {
        statuses = statuses.isEmpty() ? Set.of() : Set.copyOf(statuses);
    }

    public static CoverSearch everything() {
        return new CoverSearch(
                OptionalLong.empty(),
                OptionalLong.empty(),
                OptionalLong.empty(),
                Optional.empty(),
                EnumSet.noneOf(CoverStatus.class),
                false,
                "");
    }

    /** Those wanted: what ends first comes first, then what has no end, by customer, site and name. */
    public List<UnitCover> of(List<UnitCover> units) {
        String[] wanted = words.strip().toLowerCase(Locale.ROOT).split("\\s+");
        return units.stream()
                .filter(this::wants)
                .filter(unit -> holds(unit, wanted))
                .sorted(Comparator.comparing(
                        (UnitCover unit) -> unit.lastDay().orElse(LocalDate.MAX), Comparator.naturalOrder()))
                .toList();
    }

    private boolean wants(UnitCover unit) {
        return (customer.isEmpty() || customer.getAsLong() == unit.customerId())
                && (site.isEmpty() || site.equals(unit.siteId()))
                && (model.isEmpty() || model.getAsLong() == unit.modelId().orElse(0))
                && (month.isEmpty()
                        || unit.ends() && month.equals(unit.lastDay().map(YearMonth::from)))
                && (statuses.isEmpty() || statuses.contains(unit.status()))
                && (!pastSupport || unit.pastSupport());
    }

    private static boolean holds(UnitCover cover, String[] wanted) {
        Unit unit = cover.unit();
        String all = String.join(
                        "\n", unit.name(), unit.serial(), unit.place(), unit.site(), unit.customer(), unit.modelLabel())
                .toLowerCase(Locale.ROOT);
        for (String word : wanted) {
            if (!all.contains(word)) {
                return false;
            }
        }
        return true;
    }
}
