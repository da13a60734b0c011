package org.roundsman.reports.figures;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import javax.sql.DataSource;
import org.roundsman.firmware.FirmwareState;
import org.roundsman.firmware.FirmwareStates;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.reports.Equipment;
import org.roundsman.reports.Equipment.Ending;
import org.roundsman.reports.Equipment.Runs;
import org.roundsman.reports.ReportSubject;
import org.roundsman.warranty.Cost;
import org.roundsman.warranty.UnitCover;
import org.roundsman.warranty.Warranties;

/**
 * Firmware and warranty of a customer's devices as they stand at a moment. Spares that stand at no site do not count. Thread-safe.
 */
@ApplicationScoped
public class Inventory {

    private static final int MONTHS_AHEAD = 6;

    private static final Comparator<UnitCover> BY_END = Comparator.comparing(
                    (UnitCover unit) -> unit.lastDay().orElseThrow())
            .thenComparing(unit -> unit.unit().site(), String.CASE_INSENSITIVE_ORDER)
            .thenComparing(unit -> unit.unit().name(), String.CASE_INSENSITIVE_ORDER)
            .thenComparing(unit -> unit.deviceId().orElseThrow());

    private final DataSource database;

    @Inject
    public Inventory(DataSource database) {
        this.database = database;
    }

    /** Cover that ends is told from the day after the stretch on, for six months. */
    public Equipment of(long customerId, ReportSubject subject, Instant asOf) {
        List<FirmwareState> firmware = new FirmwareStates(database, at(asOf)).all(CustomerScope.of(customerId));
        List<UnitCover> units = units(customerId, asOf);
        List<UnitCover> ending = units.stream()
                .filter(unit -> ends(unit, subject.to()))
                .sorted(BY_END)
                .toList();
        Cost cost = Cost.of(ending);
        return new Equipment(
                firmware.size(),
                counted(firmware, state -> state.status().name()),
                runs(firmware),
                counted(units, unit -> unit.status().name()),
                ending.stream().map(Inventory::ending).toList(),
                (int) units.stream().filter(UnitCover::pastSupport).count(),
                cost.sums(),
                cost.unpriced());
    }

    /** What the devices of a customer cost. */
    public Costs costs(long customerId, Instant asOf) {
        List<UnitCover> units = units(customerId, asOf);
        return new Costs(
                units.stream()
                        .filter(unit -> !Cost.of(List.of(unit)).sums().isEmpty())
                        .collect(Collectors.toMap(unit -> unit.deviceId().orElseThrow(), unit -> Cost.of(List.of(unit))
                                .sums())),
                Cost.of(units.stream().filter(UnitCover::pastSupport).toList()).sums());
    }

    private List<UnitCover> units(long customerId, Instant asOf) {
        return new Warranties(database, at(asOf))
                .all(CustomerScope.of(customerId)).stream()
                        .filter(unit -> unit.deviceId().isPresent())
                        .toList();
    }

    private static Clock at(Instant moment) {
        return Clock.fixed(moment, ZoneOffset.UTC);
    }

    private static boolean ends(UnitCover unit, LocalDate first) {
        return unit.lastDay()
                .filter(day -> !day.isBefore(first) && day.isBefore(first.plusMonths(MONTHS_AHEAD)))
                .isPresent();
    }

    private static Ending ending(UnitCover unit) {
        return new Ending(
                unit.unit().site(),
                unit.unit().name(),
                unit.unit().modelLabel(),
                unit.serial(),
                unit.lastDay().orElseThrow());
    }

    private static List<Runs> runs(List<FirmwareState> firmware) {
        Map<List<String>, List<FirmwareState>> groups = firmware.stream()
                .collect(Collectors.groupingBy(state -> List.of(state.place().model(), state.version())));
        return groups.values().stream()
                .map(Inventory::group)
                .sorted(Comparator.comparing(Runs::model, String.CASE_INSENSITIVE_ORDER)
                        .thenComparing(Runs::model)
                        .thenComparing(Runs::version))
                .toList();
    }

    private static Runs group(List<FirmwareState> alike) {
        FirmwareState one = alike.get(0);
        return new Runs(one.place().model(), one.version(), alike.size(), counted(alike, state -> state.status()
                .name()));
    }

    private static <T> SortedMap<String, Integer> counted(Collection<T> all, Function<T, String> name) {
        SortedMap<String, Integer> counts = new TreeMap<>();
        all.forEach(one -> counts.merge(name.apply(one), 1, Integer::sum));
        return counts;
    }
}
