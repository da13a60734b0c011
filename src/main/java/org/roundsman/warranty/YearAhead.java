package org.roundsman.warranty;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.Predicate;

/**
 * What ends in this month and the eleven after it, and what stands beside that. Every unit is in exactly one of the months,
 * {@code ended}, {@code missing}, {@code later} and {@code open}; those past support are in one of these too.
 *
 * @param months twelve, in order
 * @param ending in those twelve months
 * @param ended cover that is over, or was never promised
 * @param missing terms or date not known
 * @param later cover that ends after the twelve months
 * @param open cover without an end
 * @param pastSupport units whose maker gives no help any more
 * @param customers by customer, by name
 * @param models by model, by name; units without a model come last
 */
public record YearAhead(
        List<Month> months,
        Cost ending,
        Cost ended,
        Cost missing,
        Cost later,
        Cost open,
        Cost pastSupport,
        List<Share> customers,
        List<Share> models) {

    public static final int MONTHS = 12;

    /** What ends in one month. */
    public record Month(YearMonth month, Cost cost) {}

    /**
     * The part of one customer or model.
     *
     * @param id 0 for units without a model
     * @param units all of it
     * @param ending within the twelve months, with their cost
     */
    public record Share(long id, String name, int units, Cost ending, int ended, int missing, int pastSupport) {}

    /** The first month: where one site is a day behind, its day counts, so that nothing falls out. */
    public static YearMonth first(List<UnitCover> units, LocalDate otherwise) {
        return YearMonth.from(units.stream()
                .map(UnitCover::today)
                .min(Comparator.naturalOrder())
                .orElse(otherwise));
    }

    public static YearAhead of(List<UnitCover> units, YearMonth first) {
        YearMonth last = first.plusMonths(MONTHS - 1);
        Map<YearMonth, List<UnitCover>> byMonth = new LinkedHashMap<>();
        for (int i = 0; i < MONTHS; i++) {
            byMonth.put(first.plusMonths(i), new ArrayList<>());
        }
        units.stream().filter(unit -> endsBy(unit, last)).forEach(unit -> byMonth.get(month(unit))
                .add(unit));
        return new YearAhead(
                byMonth.entrySet().stream()
                        .map(one -> new Month(one.getKey(), Cost.of(one.getValue())))
                        .toList(),
                cost(units, unit -> endsBy(unit, last)),
                cost(units, unit -> unit.status() == CoverStatus.ENDED),
                cost(units, unit -> unit.status() == CoverStatus.MISSING),
                cost(units, unit -> unit.ends() && month(unit).isAfter(last)),
                cost(units, unit -> unit.status() == CoverStatus.COVERED && !unit.ends()),
                cost(units, UnitCover::pastSupport),
                shares(units, last, UnitCover::customerId, unit -> unit.unit().customer()),
                shares(units, last, unit -> unit.modelId().orElse(0), unit -> unit.unit()
                        .modelLabel()));
    }

    private static boolean endsBy(UnitCover unit, YearMonth last) {
        return unit.ends() && !month(unit).isAfter(last);
    }

    private static YearMonth month(UnitCover unit) {
        return YearMonth.from(unit.lastDay().orElseThrow());
    }

    private static Cost cost(List<UnitCover> units, Predicate<UnitCover> wanted) {
        return Cost.of(units.stream().filter(wanted).toList());
    }

    private static List<Share> shares(
            List<UnitCover> units, YearMonth last, Function<UnitCover, Long> id, Function<UnitCover, String> name) {
        Map<Long, List<UnitCover>> groups = new LinkedHashMap<>();
        units.forEach(unit -> groups.computeIfAbsent(id.apply(unit), made -> new ArrayList<>())
                .add(unit));
        return groups.entrySet().stream()
                .map(group -> share(group.getKey(), name.apply(group.getValue().get(0)), group.getValue(), last))
                .sorted(Comparator.comparing((Share share) -> share.id() == 0)
                        .thenComparing(Share::name, String.CASE_INSENSITIVE_ORDER)
                        .thenComparing(Share::id))
                .toList();
    }

    private static Share share(long id, String name, List<UnitCover> units, YearMonth last) {
        return new Share(
                id,
                name,
                units.size(),
                cost(units, unit -> endsBy(unit, last)),
                count(units, unit -> unit.status() == CoverStatus.ENDED),
                count(units, unit -> unit.status() == CoverStatus.MISSING),
                count(units, UnitCover::pastSupport));
    }

    private static int count(List<UnitCover> units, Predicate<UnitCover> wanted) {
        return (int) units.stream().filter(wanted).count();
    }
}
