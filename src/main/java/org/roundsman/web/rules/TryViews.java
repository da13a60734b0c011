package org.roundsman.web.rules;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.Severity;
import org.roundsman.rules.DryRun;
import org.roundsman.rules.RuleField;
import org.roundsman.rules.RuleLevel;
import org.roundsman.rules.ShippedRules;
import org.roundsman.rules.TriedAlarm;
import org.roundsman.web.page.Words;

/** What the page of a try shows. */
final class TryViews {

    private static final int SHOWN = 200;

    private TryViews() {}

    /** An alarm that there would have been. */
    record Line(
            long deviceId,
            String device,
            String place,
            String when,
            String length,
            String severity,
            String why,
            boolean only) {}

    /** The alarms of one set of values. */
    record Side(String count, String severities, List<Line> lines, String left) {}

    /** A field to send again when the values are saved. */
    record Hidden(String name, String value) {}

    /** The whole page. */
    record View(
            long id,
            AlarmType type,
            String place,
            String values,
            String range,
            String state,
            boolean running,
            boolean done,
            int percent,
            String share,
            String trouble,
            Side now,
            Side tried,
            List<String> basis,
            String back,
            List<Hidden> again,
            boolean writes) {}

    static View of(DryRun run, boolean writes, int basedOn) {
        AlarmType type = run.wish().type();
        DryRun.Result result = run.result().orElse(null);
        return new View(
                run.id(),
                type,
                run.wish().level() == RuleLevel.ALL
                        ? "everything"
                        : run.wish().level().word() + " " + run.targetName(),
                RuleWords.of(ShippedRules.of(type), run.wish().fields()),
                Words.moment(run.from(), ZoneOffset.UTC) + " to " + Words.moment(run.to(), ZoneOffset.UTC) + " (UTC)",
                state(run.state()),
                !run.state().over(),
                result != null,
                run.total() == 0 ? 0 : (int) (100L * run.done() / run.total()),
                Words.count(run.done()) + " of " + Words.many(run.total(), "device", "devices"),
                run.trouble(),
                result == null ? null : side(result.current(), result.tried()),
                result == null ? null : side(result.tried(), result.current()),
                result == null ? List.of() : result.basis(),
                RuleViews.address(type, run.wish().level(), run.wish().targetId()),
                again(run, basedOn),
                writes);
    }

    private static String state(DryRun.State state) {
        return switch (state) {
            case WAITING -> "The try waits for others to end";
            case RUNNING -> "The try is running";
            case DONE -> "The try is done";
            case CANCELLED -> "The try was cancelled";
            case FAILED -> "The try failed";
        };
    }

    private static List<Hidden> again(DryRun run, int basedOn) {
        List<Hidden> again = new ArrayList<>(List.of(
                new Hidden("level", run.wish().level().word()),
                new Hidden("target", String.valueOf(run.wish().targetId())),
                new Hidden("basedOn", String.valueOf(basedOn))));
        run.wish()
                .fields()
                .forEach((field, text) -> again.add(new Hidden(
                        field.key(), field.form() == RuleField.Form.SECONDS ? RuleWords.minutes(text) : text)));
        return again;
    }

    private static Side side(DryRun.Tally own, DryRun.Tally other) {
        Map<Long, List<TriedAlarm>> others =
                other.alarms().stream().collect(Collectors.groupingBy(TriedAlarm::deviceId));
        List<Line> lines = own.alarms().stream()
                .limit(SHOWN)
                .map(alarm -> line(
                        alarm,
                        others.getOrDefault(alarm.deviceId(), List.of()).stream()
                                .noneMatch(alarm::overlaps)))
                .toList();
        int left = own.count() - lines.size();
        return new Side(
                Words.many(own.count(), "alarm", "alarms"),
                severities(own.bySeverity()),
                lines,
                left > 0 ? Words.many(left, "older one is", "older ones are") + " counted and not listed." : "");
    }

    private static String severities(Map<Severity, Integer> bySeverity) {
        return Arrays.stream(Severity.values())
                .sorted(Comparator.reverseOrder())
                .filter(bySeverity::containsKey)
                .map(severity -> Words.count(bySeverity.get(severity)) + " " + severity.word())
                .collect(Collectors.joining(", "));
    }

    private static Line line(TriedAlarm alarm, boolean only) {
        ZoneId zone = ZoneId.of(alarm.timeZone());
        Instant end = alarm.ended().orElse(null);
        return new Line(
                alarm.deviceId(),
                alarm.device() + (alarm.part().isEmpty() ? "" : ", " + alarm.part()),
                alarm.customer() + ", " + alarm.site(),
                Words.moment(alarm.began(), zone) + (end == null ? "" : " to " + Words.moment(end, zone)),
                end == null ? "went on at the end" : Words.length(Duration.between(alarm.began(), end)),
                alarm.highest().word(),
                alarm.why(),
                only);
    }
}
