package org.roundsman.web.api;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.stream.Collectors;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.roundsman.fleet.InputRejected;
import org.roundsman.planned.PlanDraft;
import org.roundsman.planned.PlannedWindow;
import org.roundsman.planned.Reach;
import org.roundsman.planned.Repetition;
import org.roundsman.planned.Stretch;
import org.roundsman.planned.Target;
import org.roundsman.planned.Timing;

/** A window in which a site or a device is worked on; time in it counts for nobody. */
@Schema(name = "PlannedWork")
record PlannedWorkJson(
        @Schema(examples = "31") long id,

        @Schema(
                description =
                        "running, coming (once, later), repeating (again later), over, cancelled, or replaced (its"
                                + " times were changed: the rest is in another window)",
                examples = "running")
        String state,

        @Schema(examples = "7") long customerId,

        @Schema(nullable = true, description = "Null for all sites of the customer", examples = "21")
        Long siteId,

        @Schema(nullable = true, description = "Null for more than one device", examples = "417")
        Long deviceId,

        @Schema(description = "What is worked on, in words", examples = "Harbour clinic")
        String where,

        @Schema(examples = "New switch in the hall") String title,

        @Schema(examples = "The old one restarts by itself.")
        String reason,

        @Schema(nullable = true) Once once,
        @Schema(nullable = true) Repeating repeating,

        @Schema(nullable = true, description = "What goes on now")
        Once running,

        @Schema(nullable = true, description = "What comes next")
        Once next,

        @Schema(examples = "wren") String madeBy,
        @Schema(examples = "2026-03-04T12:00:00Z") Instant madeAt,

        @Schema(nullable = true, description = "From then on nothing of it counts: it was cancelled or replaced")
        Instant stoppedAt,

        @Schema(nullable = true, description = "The window whose place it took", examples = "30")
        Long replaces) {

    /** From one moment to another. */
    @Schema(name = "PlannedStretch")
    record Once(
            @Schema(examples = "2026-03-04T12:00:00Z") Instant from,
            @Schema(examples = "2026-03-04T14:00:00Z") Instant to) {

        static Once of(Stretch stretch) {
            return new Once(stretch.from(), stretch.to());
        }
    }

    /** Again and again, by the clock of each site. */
    @Schema(name = "PlannedRepetition")
    record Repeating(
            @Schema(description = "daily, weekly, month-day or month-weekday", examples = "month-weekday")
            String repeats,

            @Schema(
                    nullable = true,
                    description = "For weekly, and one for month-weekday: 1 = Monday to 7 = Sunday (ISO 8601)",
                    examples = "[7]")
            List<Integer> weekdays,

            @Schema(
                    nullable = true,
                    description =
                            "For month-day the day, 1 to 31; for month-weekday which of them, 1 to 4; -1 is the last",
                    examples = "1")
            Integer which,

            @Schema(
                    type = SchemaType.STRING,
                    description = "By the clock of the site. One that the clock skips is later by as much; of one that"
                            + " comes twice the first counts",
                    examples = "02:30")
            LocalTime start,

            @Schema(description = "How long each lasts, in real elapsed time", examples = "90")
            Integer minutes,

            @Schema(description = "On which one may begin", examples = "2026-03-01")
            LocalDate firstDay,

            @Schema(nullable = true, description = "Null for no end", examples = "2026-12-31")
            LocalDate lastDay,

            @Schema(nullable = true, description = "Days that it leaves out", examples = "[\"2026-04-05\"]")
            List<LocalDate> skipped) {

        static Repeating of(Timing.Repeating plan) {
            Repetition how = plan.how();
            return new Repeating(
                    word(how),
                    weekdays(how),
                    which(how),
                    plan.start(),
                    Math.toIntExact(plan.length().toMinutes()),
                    plan.firstDay(),
                    plan.lastDay().orElse(null),
                    List.copyOf(plan.skipped()));
        }

        private static String word(Repetition how) {
            if (how instanceof Repetition.Daily) {
                return "daily";
            }
            if (how instanceof Repetition.Weekly) {
                return "weekly";
            }
            return how instanceof Repetition.MonthDay ? "month-day" : "month-weekday";
        }

        private static List<Integer> weekdays(Repetition how) {
            if (how instanceof Repetition.Weekly weekly) {
                return weekly.days().stream().map(DayOfWeek::getValue).sorted().toList();
            }
            return how instanceof Repetition.MonthWeekday monthly
                    ? List.of(monthly.weekday().getValue())
                    : null;
        }

        private static Integer which(Repetition how) {
            if (how instanceof Repetition.MonthDay monthly) {
                return monthly.day();
            }
            return how instanceof Repetition.MonthWeekday monthly ? Integer.valueOf(monthly.place()) : null;
        }

        /** Null fields are left to the feature, which names them. */
        Timing timing() {
            return Timing.Repeating.of(
                    how(), start, Duration.ofMinutes(Given.or(minutes, 0)), firstDay, lastDay, Given.list(skipped));
        }

        private Repetition how() {
            List<Integer> days = Given.list(weekdays);
            if (days.stream().anyMatch(day -> day < 1 || day > 7)) {
                throw new InputRejected(Map.of("repeating.weekdays", "from 1 (Monday) to 7 (Sunday)"));
            }
            return switch (Given.text(repeats)) {
                case "daily" -> new Repetition.Daily();
                case "weekly" ->
                    new Repetition.Weekly(days.stream().map(DayOfWeek::of).collect(Collectors.toSet()));
                case "month-day" -> new Repetition.MonthDay(Given.or(which, 0));
                case "month-weekday" ->
                    new Repetition.MonthWeekday(
                            Given.or(which, 0), days.size() == 1 ? DayOfWeek.of(days.get(0)) : null);
                default -> null;
            };
        }
    }

    /** What is entered: one of customer, site and device, and one of once and repeating. */
    @Schema(name = "PlannedWorkEntry")
    record Entry(
            @Schema(nullable = true, description = "All sites of that customer", examples = "7")
            Long customer,

            @Schema(nullable = true, description = "That site with all its devices", examples = "21")
            Long site,

            @Schema(nullable = true, description = "That device alone", examples = "417")
            Long device,

            @Schema(examples = "New switch in the hall") String title,

            @Schema(nullable = true, examples = "The old one restarts by itself.")
            String reason,

            @Schema(
                    nullable = true,
                    description = "5 minutes to 14 days; may have begun up to 7 days ago. Without “from” it begins now")
            Once once,

            @Schema(nullable = true, description = "5 minutes to 72 hours each, daily ones 23 hours at most")
            Repeating repeating)
            implements ApiBody {

        PlanDraft draft(Instant now) {
            return new PlanDraft(where(), Given.text(title), Given.text(reason), timing(now));
        }

        private PlanDraft.Where where() {
            Map<Reach, Long> named = new LinkedHashMap<>();
            named.put(Reach.CUSTOMER, customer);
            named.put(Reach.SITE, site);
            named.put(Reach.DEVICE, device);
            named.values().removeIf(java.util.Objects::isNull);
            if (named.size() != 1) {
                throw new InputRejected(Map.of("site", "name one customer, one site or one device"));
            }
            Map.Entry<Reach, Long> one = named.entrySet().iterator().next();
            return new PlanDraft.Where(one.getKey(), one.getValue());
        }

        private Timing timing(Instant now) {
            if ((once == null) == (repeating == null)) {
                throw new InputRejected(Map.of("once", "either once or repeating"));
            }
            if (repeating != null) {
                return repeating.timing();
            }
            Instant from = Given.or(once.from(), now);
            if (once.to() == null || !from.isBefore(once.to())) {
                throw new InputRejected(Map.of("once.to", "a moment after the beginning"));
            }
            return new Timing.Once(new Stretch(from, once.to()));
        }
    }

    static PlannedWorkJson of(PlannedWindow window, Instant now) {
        Target target = window.target();
        PlannedWindow.Course course = window.course();
        return new PlannedWorkJson(
                window.id(),
                Choice.word(window.state(now)),
                target.customerId(),
                orNull(target.siteId()),
                orNull(target.deviceId()),
                target.words(),
                window.title(),
                window.reason(),
                window.timing() instanceof Timing.Once once ? Once.of(once.when()) : null,
                window.timing() instanceof Timing.Repeating plan ? Repeating.of(plan) : null,
                window.running(now).map(Once::of).orElse(null),
                window.next(now).map(Once::of).orElse(null),
                window.madeBy(),
                window.madeAt(),
                course.countsUntil().orElse(null),
                course.replaces().orElse(null));
    }

    private static Long orNull(OptionalLong id) {
        return id.isPresent() ? id.getAsLong() : null;
    }
}
