package org.roundsman.warranty;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.roundsman.fleet.DeviceKind;

/**
 * What a calendar says of one day of one customer: whose cover has its last day then. No prices: whoever knows the address
 * of a calendar may read it.
 */
record CalendarEvent(long customerId, LocalDate day, String summary, String description) {

    /** An event names so many units; of more it says how many. */
    static final int MOST_NAMED = 500;

    /**
     * One event per customer and day, by day and customer.
     *
     * @param from first day that is told
     * @param to last day that is told
     */
    static List<CalendarEvent> of(List<UnitCover> units, LocalDate from, LocalDate to) {
        Map<LocalDate, Map<Long, List<UnitCover>>> days = new TreeMap<>();
        units.stream()
                .filter(unit -> unit.lastDay()
                        .filter(day -> !day.isBefore(from) && !day.isAfter(to))
                        .isPresent())
                .forEach(unit -> days.computeIfAbsent(unit.lastDay().get(), made -> new TreeMap<>())
                        .computeIfAbsent(unit.customerId(), made -> new ArrayList<>())
                        .add(unit));
        return days.entrySet().stream()
                .flatMap(day ->
                        day.getValue().entrySet().stream().map(one -> of(one.getKey(), day.getKey(), one.getValue())))
                .toList();
    }

    private static CalendarEvent of(long customerId, LocalDate day, List<UnitCover> units) {
        List<UnitCover> sorted = units.stream()
                .sorted(Comparator.comparing((UnitCover one) -> one.unit().site())
                        .thenComparing(one -> one.unit().title())
                        .thenComparing(UnitCover::serial))
                .toList();
        String customer = units.get(0).unit().customer();
        String summary = "Warranty ends: " + counted(units) + ", " + customer;
        String named =
                sorted.stream().limit(MOST_NAMED).map(CalendarEvent::line).collect(Collectors.joining("\n"));
        int more = sorted.size() - MOST_NAMED;
        return new CalendarEvent(
                customerId,
                day,
                summary,
                "Last day of cover: " + day + "\n" + named + (more > 0 ? "\nand " + more + " more" : ""));
    }

    /** {@code 3 access points}, {@code 1 switch}; {@code 4 devices} of several kinds or where no kind is known. */
    static String counted(List<UnitCover> units) {
        List<DeviceKind> kinds = units.stream()
                .map(one -> one.unit().kind().orElse(null))
                .distinct()
                .toList();
        String word = kinds.size() == 1 && kinds.get(0) != null ? kinds.get(0).word() : "device";
        return units.size() + " " + (units.size() == 1 ? word : word.endsWith("ch") ? word + "es" : word + "s");
    }

    private static String line(UnitCover cover) {
        Unit unit = cover.unit();
        StringBuilder line = new StringBuilder(unit.title());
        if (!unit.name().isEmpty() && !unit.serial().isEmpty()) {
            line.append(", serial ").append(unit.serial());
        }
        if (!unit.modelLabel().isEmpty()) {
            line.append(", ").append(unit.modelLabel());
        }
        if (!unit.site().isEmpty()) {
            line.append(", ").append(unit.site());
        }
        return line.toString();
    }
}
