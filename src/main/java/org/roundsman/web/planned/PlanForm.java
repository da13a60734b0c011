package org.roundsman.web.planned;

import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jboss.resteasy.reactive.RestForm;
import org.roundsman.planned.PlanDraft;
import org.roundsman.planned.PlannedWindow;
import org.roundsman.planned.Reach;
import org.roundsman.planned.Repetition;
import org.roundsman.planned.Target;
import org.roundsman.planned.Timing;

/** What the form of planned work sent, as text, to be shown again when something in it is wrong. */
record PlanForm(
        @RestForm String of,
        @RestForm String title,
        @RestForm String reason,
        @RestForm String repeats,
        @RestForm String from,
        @RestForm String to,
        @RestForm String start,
        @RestForm String hours,
        @RestForm String minutes,
        @RestForm List<String> weekday,
        @RestForm String day,
        @RestForm String which,
        @RestForm String dayOfWeek,
        @RestForm String firstDay,
        @RestForm String lastDay,
        @RestForm String skipped,
        @RestForm String act) {

    static final String ONCE = "once";
    static final String DAILY = "daily";
    static final String WEEKLY = "weekly";
    static final String MONTH_DAY = "month-day";
    static final String MONTH_WEEKDAY = "month-weekday";

    /** An empty form of that place, for two hours from the next full hour on. */
    static PlanForm blank(String of, ZoneId zone, Instant now) {
        var begin = now.atZone(zone).withMinute(0).plusHours(1);
        LocalDate today = begin.toLocalDate();
        return new PlanForm(
                of,
                "",
                "",
                ONCE,
                WorkWords.field(begin.toInstant(), zone),
                WorkWords.field(begin.plusHours(2).toInstant(), zone),
                "22:00",
                "2",
                "0",
                List.of(),
                "1",
                "1",
                "7",
                today.toString(),
                "",
                "",
                "");
    }

    static PlanForm of(PlannedWindow window, Instant now) {
        ZoneId zone = window.target().zone();
        PlanForm blank = blank(code(window.target()), zone, now);
        if (window.timing() instanceof Timing.Once once) {
            return blank.with(
                    window,
                    WorkWords.field(once.when().from(), zone),
                    WorkWords.field(once.when().to(), zone));
        }
        return blank.with(window, (Timing.Repeating) window.timing());
    }

    private PlanForm with(PlannedWindow window, String begin, String end) {
        return new PlanForm(
                of,
                window.title(),
                window.reason(),
                ONCE,
                begin,
                end,
                start,
                hours,
                minutes,
                weekday,
                day,
                which,
                dayOfWeek,
                firstDay,
                lastDay,
                skipped,
                "");
    }

    private PlanForm with(PlannedWindow window, Timing.Repeating plan) {
        Repetition how = plan.how();
        return new PlanForm(
                of,
                window.title(),
                window.reason(),
                word(how),
                from,
                to,
                plan.start().toString(),
                String.valueOf(plan.length().toHours()),
                String.valueOf(plan.length().toMinutesPart()),
                how instanceof Repetition.Weekly weekly
                        ? weekly.days().stream()
                                .map(d -> String.valueOf(d.getValue()))
                                .toList()
                        : List.of(),
                how instanceof Repetition.MonthDay monthly ? String.valueOf(monthly.day()) : day,
                how instanceof Repetition.MonthWeekday monthly ? String.valueOf(monthly.place()) : which,
                how instanceof Repetition.MonthWeekday monthly
                        ? String.valueOf(monthly.weekday().getValue())
                        : dayOfWeek,
                plan.firstDay().toString(),
                plan.lastDay().map(LocalDate::toString).orElse(""),
                plan.skipped().stream().map(LocalDate::toString).collect(Collectors.joining("\n")),
                "");
    }

    private static String word(Repetition how) {
        if (how instanceof Repetition.Daily) {
            return DAILY;
        }
        if (how instanceof Repetition.Weekly) {
            return WEEKLY;
        }
        return how instanceof Repetition.MonthDay ? MONTH_DAY : MONTH_WEEKDAY;
    }

    /** What stands for a place in the form: {@code site-11}. */
    static String code(Target target) {
        return switch (target.reach()) {
            case CUSTOMER -> "customer-" + target.customerId();
            case SITE -> "site-" + target.siteId().orElse(0);
            case DEVICE -> "device-" + target.deviceId().orElse(0);
        };
    }

    /** The place that such a text stands for; empty when it stands for none. */
    static Optional<PlanDraft.Where> where(String code) {
        String[] parts = (code == null ? "" : code).split("-", 2);
        if (parts.length < 2 || !parts[1].matches("\\d{1,18}")) {
            return Optional.empty();
        }
        long id = Long.parseLong(parts[1]);
        return switch (parts[0]) {
            case "customer" -> Optional.of(new PlanDraft.Where(Reach.CUSTOMER, id));
            case "site" -> Optional.of(new PlanDraft.Where(Reach.SITE, id));
            case "device" -> Optional.of(new PlanDraft.Where(Reach.DEVICE, id));
            default -> Optional.empty();
        };
    }

    boolean previews() {
        return "preview".equals(act);
    }

    /** What was entered for that place. */
    PlanDraft draft(PlanDraft.Where where, ZoneId zone, Entered entered) {
        Timing timing = ONCE.equals(repeats)
                ? entered.once(from, to, zone)
                : entered.repeating(
                        how(entered),
                        entered.time("start", start),
                        entered.length("length", hours, minutes),
                        entered.day("firstDay", firstDay),
                        new Entered.Days(entered.dayOrNone("lastDay", lastDay), entered.days("skipped", skipped)));
        return new PlanDraft(where, Entered.text(title), Entered.text(reason), timing);
    }

    private Repetition how(Entered entered) {
        return switch (Entered.text(repeats)) {
            case DAILY -> new Repetition.Daily();
            case WEEKLY -> new Repetition.Weekly(weekdays());
            case MONTH_DAY -> new Repetition.MonthDay(entered.number("day", day));
            case MONTH_WEEKDAY ->
                new Repetition.MonthWeekday(
                        entered.number("which", which),
                        DayOfWeek.of(Math.max(1, Math.min(7, entered.number("weekday", dayOfWeek)))));
            default -> {
                entered.fault("repeats", "once, every day, on weekdays, or monthly");
                yield new Repetition.Daily();
            }
        };
    }

    private java.util.Set<DayOfWeek> weekdays() {
        return (weekday == null ? List.<String>of() : weekday)
                .stream()
                        .filter(one -> one.matches("[1-7]"))
                        .map(one -> DayOfWeek.of(Integer.parseInt(one)))
                        .collect(Collectors.toSet());
    }

    public boolean ticked(int isoDay) {
        return weekday != null && weekday.contains(String.valueOf(isoDay));
    }
}
