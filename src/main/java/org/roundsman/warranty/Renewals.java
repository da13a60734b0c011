package org.roundsman.warranty;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Units whose cover has its last day in a period, as the basis of a quote.
 *
 * @param from first day of the period
 * @param to last day of the period
 * @param customers by name; only those with units
 */
public record Renewals(LocalDate from, LocalDate to, List<OfCustomer> customers, Cost total) {

    /** One customer's, by last day, site and name. */
    public record OfCustomer(long id, String name, List<UnitCover> units, Cost cost) {}

    /**
     * @param units those that may be in it
     */
    public static Renewals of(List<UnitCover> units, LocalDate from, LocalDate to) {
        List<UnitCover> found = units.stream()
                .filter(unit -> unit.lastDay()
                        .filter(day -> !day.isBefore(from) && !day.isAfter(to))
                        .isPresent())
                .sorted(Comparator.comparing((UnitCover unit) -> unit.unit().customer(), String.CASE_INSENSITIVE_ORDER)
                        .thenComparing(unit -> unit.lastDay().orElseThrow())
                        .thenComparing(unit -> unit.unit().site(), String.CASE_INSENSITIVE_ORDER)
                        .thenComparing(unit -> unit.unit().title(), String.CASE_INSENSITIVE_ORDER))
                .toList();
        Map<Long, List<UnitCover>> groups = new LinkedHashMap<>();
        found.forEach(unit -> groups.computeIfAbsent(unit.customerId(), made -> new ArrayList<>())
                .add(unit));
        List<OfCustomer> customers = groups.entrySet().stream()
                .map(group -> new OfCustomer(
                        group.getKey(),
                        group.getValue().get(0).unit().customer(),
                        List.copyOf(group.getValue()),
                        Cost.of(group.getValue())))
                .toList();
        return new Renewals(from, to, customers, Cost.of(found));
    }
}
