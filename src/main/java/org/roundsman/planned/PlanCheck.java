package org.roundsman.planned;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What a window may be. The bounds are common practice without a source: they keep a slip of the finger from making a site
 * count for nobody for months.
 */
public final class PlanCheck {

    /** The shortest window. */
    public static final Duration SHORTEST = Duration.ofMinutes(5);

    /** The longest that happens once. */
    public static final Duration LONGEST_ONCE = Duration.ofDays(14);

    /** The longest that repeats weekly or monthly. */
    public static final Duration LONGEST_REPEATING = Duration.ofHours(72);

    /** The longest that repeats daily: some time of the day has to count. */
    public static final Duration LONGEST_DAILY = Duration.ofHours(23);

    /** How far in the past work may begin that was not planned when it was done. */
    public static final Duration FURTHEST_BACK = Duration.ofDays(7);

    /** How far ahead anything may begin. */
    public static final Duration FURTHEST_AHEAD = Duration.ofDays(730);

    private static final int MOST_SKIPPED = 100;

    private final Map<String, String> faults = new LinkedHashMap<>();

    private PlanCheck() {}

    /**
     * What is wrong with it, by field; empty when nothing is.
     *
     * @param zones of the sites it reaches
     * @param begun when the window to change began; empty for a new one
     */
    static Map<String, String> faults(PlanDraft draft, List<ZoneId> zones, Instant now, Optional<Instant> begun) {
        PlanCheck check = new PlanCheck();
        check.text("title", draft.title(), 1, 120);
        check.text("reason", draft.reason(), 0, 2000);
        if (draft.timing() instanceof Timing.Once once) {
            check.once(once.when(), now, begun);
        } else if (draft.timing() instanceof Timing.Repeating repeating) {
            check.repeating(repeating, zones, now);
        } else {
            check.that("timing", false, "say when: once, or repeating");
        }
        return check.faults;
    }

    private void that(String field, boolean holds, String fault) {
        if (!holds) {
            faults.putIfAbsent(field, fault);
        }
    }

    private void text(String field, String value, int least, int most) {
        that(field, value != null && value.strip().length() >= least, "must not be empty");
        that(field, value == null || value.length() <= most, "at most " + most + " characters");
        that(
                field,
                value == null || value.chars().noneMatch(c -> c < ' ' && c != '\n' && c != '\r' && c != '\t'),
                "holds a control character");
    }

    private void once(Stretch when, Instant now, Optional<Instant> begun) {
        that("to", when.length().compareTo(SHORTEST) >= 0, "at least 5 minutes after the beginning");
        that("to", when.length().compareTo(LONGEST_ONCE) <= 0, "at most 14 days after the beginning");
        boolean kept = begun.equals(Optional.of(when.from()));
        that(
                "from",
                kept || !when.from().isBefore(now.minus(FURTHEST_BACK)),
                "at most 7 days ago: figures of longer ago stay as they are");
        that("from", !when.from().isAfter(now.plus(FURTHEST_AHEAD)), "at most two years ahead");
    }

    private void repeating(Timing.Repeating plan, List<ZoneId> zones, Instant now) {
        if (plan.how() == null || plan.start() == null || plan.firstDay() == null) {
            that("repeats", plan.how() != null, "every day, on weekdays, or monthly");
            that("start", plan.start() != null, "a time of day such as 22:30");
            that("firstDay", plan.firstDay() != null, "a day such as 2026-03-29");
            return;
        }
        how(plan.how());
        length(plan);
        days(plan, now.atZone(zones.get(0)).toLocalDate());
        if (faults.isEmpty()) {
            skipped(plan);
        }
        if (faults.isEmpty()) {
            boolean comes = zones.stream()
                    .anyMatch(zone -> !plan.after(now, zone, 1).isEmpty()
                            || !plan.between(now, now.plusNanos(1), zone).isEmpty());
            that("lastDay", comes, "with these days nothing is left to come");
        }
    }

    private void days(Timing.Repeating plan, LocalDate today) {
        LocalDate first = plan.firstDay();
        that(
                "firstDay",
                !first.isAfter(today.plusDays(FURTHEST_AHEAD.toDays())) && !first.isBefore(LocalDate.EPOCH),
                "at most two years ahead, and no day before 1970");
        plan.lastDay().ifPresent(last -> {
            that("lastDay", !last.isBefore(first), "the last day comes before the first");
            that("lastDay", last.isBefore(today.plusYears(50)), "at most 50 years ahead");
        });
    }

    private void how(Repetition how) {
        if (how instanceof Repetition.Weekly weekly) {
            that("weekdays", !weekly.days().isEmpty(), "choose at least one weekday");
        } else if (how instanceof Repetition.MonthDay monthly) {
            boolean day = monthly.day() == Repetition.LAST || monthly.day() >= 1 && monthly.day() <= 31;
            that("day", day, "from 1 to 31, or the last");
        } else if (how instanceof Repetition.MonthWeekday monthly) {
            boolean place = monthly.place() == Repetition.LAST || monthly.place() >= 1 && monthly.place() <= 4;
            that("which", place, "first, second, third, fourth or last");
            that("weekday", monthly.weekday() != null, "choose a weekday");
        }
    }

    private void length(Timing.Repeating plan) {
        that("length", plan.length().compareTo(SHORTEST) >= 0, "at least 5 minutes");
        if (plan.how() instanceof Repetition.Daily) {
            that("length", plan.length().compareTo(LONGEST_DAILY) <= 0, "at most 23 hours of every day");
        }
        that("length", plan.length().compareTo(LONGEST_REPEATING) <= 0, "at most 72 hours; longer work happens once");
        that("length", plan.length().toSecondsPart() == 0 && plan.length().toNanosPart() == 0, "in whole minutes");
    }

    private void skipped(Timing.Repeating plan) {
        that("skipped", plan.skipped().size() <= MOST_SKIPPED, "at most 100 days");
        Timing.Repeating all = Timing.Repeating.of(
                plan.how(),
                plan.start(),
                plan.length(),
                plan.firstDay(),
                plan.lastDay().orElse(null),
                List.of());
        plan.skipped().stream()
                .filter(day -> !all.on(day))
                .findFirst()
                .ifPresent(day -> that("skipped", false, day + " is no day of this window"));
    }
}
