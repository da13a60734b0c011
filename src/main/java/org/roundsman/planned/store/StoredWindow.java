package org.roundsman.planned.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.Collectors;
import org.roundsman.planned.PlannedWindow;
import org.roundsman.planned.Reach;
import org.roundsman.planned.Repetition;
import org.roundsman.planned.Stretch;
import org.roundsman.planned.Target;
import org.roundsman.planned.Timing;
import org.roundsman.system.Rows;

/** A window as columns, and back. */
final class StoredWindow {

    private StoredWindow() {}

    /**
     * The columns of a timing, in the order of {@link WindowTable}.
     *
     * @param kind name of the repetition, or ONCE
     */
    record Columns(
            String kind,
            Instant from,
            Instant to,
            LocalTime start,
            Integer seconds,
            List<Integer> weekdays,
            Integer which,
            LocalDate firstDay,
            LocalDate lastDay,
            List<LocalDate> skipped) {}

    static Columns columns(Timing timing) {
        if (timing instanceof Timing.Once once) {
            return new Columns(
                    "ONCE", once.when().from(), once.when().to(), null, null, List.of(), null, null, null, List.of());
        }
        Timing.Repeating repeating = (Timing.Repeating) timing;
        return new Columns(
                kind(repeating.how()),
                null,
                null,
                repeating.start(),
                Math.toIntExact(repeating.length().toSeconds()),
                weekdays(repeating.how()),
                which(repeating.how()),
                repeating.firstDay(),
                repeating.lastDay().orElse(null),
                List.copyOf(repeating.skipped()));
    }

    private static String kind(Repetition how) {
        if (how instanceof Repetition.Daily) {
            return "DAILY";
        }
        if (how instanceof Repetition.Weekly) {
            return "WEEKLY";
        }
        return how instanceof Repetition.MonthDay ? "MONTH_DAY" : "MONTH_WEEKDAY";
    }

    private static List<Integer> weekdays(Repetition how) {
        if (how instanceof Repetition.Weekly weekly) {
            return weekly.days().stream().map(DayOfWeek::getValue).sorted().toList();
        }
        return how instanceof Repetition.MonthWeekday monthly
                ? List.of(monthly.weekday().getValue())
                : List.of();
    }

    private static Integer which(Repetition how) {
        if (how instanceof Repetition.MonthDay monthly) {
            return monthly.day();
        }
        return how instanceof Repetition.MonthWeekday monthly ? Integer.valueOf(monthly.place()) : null;
    }

    static PlannedWindow window(ResultSet row) throws SQLException {
        return new PlannedWindow(
                row.getLong("id"),
                target(row),
                row.getString("title"),
                row.getString("reason"),
                timing(row),
                row.getString("made_by"),
                Rows.instant(row, "made_at").orElseThrow(),
                course(row));
    }

    private static Target target(ResultSet row) throws SQLException {
        return new Target(
                Reach.valueOf(row.getString("reach")),
                row.getLong("customer_id"),
                row.getString("customer_name"),
                Rows.id(row, "site_now"),
                Objects.toString(row.getString("site_name"), ""),
                Rows.id(row, "device_id"),
                Objects.toString(row.getString("device_now"), ""),
                Rows.texts(row, "zones").stream().distinct().map(ZoneId::of).toList());
    }

    private static Timing timing(ResultSet row) throws SQLException {
        String kind = row.getString("kind");
        if (kind.equals("ONCE")) {
            return new Timing.Once(new Stretch(
                    Rows.instant(row, "from_at").orElseThrow(),
                    Rows.instant(row, "to_at").orElseThrow()));
        }
        return Timing.Repeating.of(
                how(kind, ArrayColumns.numbers(row, "weekdays"), row.getInt("which")),
                row.getObject("start_time", LocalTime.class),
                Duration.ofSeconds(row.getInt("length_s")),
                row.getObject("first_day", LocalDate.class),
                row.getObject("last_day", LocalDate.class),
                ArrayColumns.days(row, "skipped"));
    }

    private static Repetition how(String kind, List<Integer> weekdays, int which) {
        return switch (kind) {
            case "DAILY" -> new Repetition.Daily();
            case "WEEKLY" ->
                new Repetition.Weekly(weekdays.stream().map(DayOfWeek::of).collect(Collectors.toSet()));
            case "MONTH_DAY" -> new Repetition.MonthDay(which);
            default -> new Repetition.MonthWeekday(which, DayOfWeek.of(weekdays.get(0)));
        };
    }

    private static PlannedWindow.Course course(ResultSet row) throws SQLException {
        List<Instant> at = ArrayColumns.instants(row, "ended_at");
        List<String> by = Rows.texts(row, "ended_by");
        List<PlannedWindow.Ended> ends = new ArrayList<>();
        for (int i = 0; i < at.size(); i++) {
            ends.add(new PlannedWindow.Ended(at.get(i), by.get(i)));
        }
        OptionalLong replaces = Rows.id(row, "replaces");
        return new PlannedWindow.Course(
                Rows.instant(row, "counts_from"),
                Rows.instant(row, "counts_until"),
                Optional.ofNullable(row.getString("stop")).map(PlannedWindow.Stop::valueOf),
                row.getString("stopped_by"),
                replaces.isPresent() ? Optional.of(replaces.getAsLong()) : Optional.empty(),
                ends);
    }
}
