package org.roundsman.web.api;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.roundsman.alarms.AlarmType;
import org.roundsman.rules.Rule;
import org.roundsman.rules.RuleField;
import org.roundsman.rules.RuleOverride;
import org.roundsman.rules.RuleSet;
import org.roundsman.rules.RuleTarget;

/** A rule with its explanation. */
@Schema(name = "Rule")
record RuleJson(
        @Schema(description = "Type of the alarm that it raises", examples = "utilisation-high")
        String type,

        @Schema(examples = "Channel busy") String title,

        @Schema(examples = "The radio's channel is busy most of the time.")
        String meaning,

        @Schema(
                description = "figure: against thresholds; fact: is so or is not; count: how often within a time;"
                        + " topology: found from what hangs on what, so it only has a severity",
                examples = "figure")
        String kind,

        @Schema(description = "Of its figure; empty where it has none", examples = "%")
        String unit,

        @Schema(description = "Whether low figures are bad") boolean low,

        @Schema(examples = "Share of time in which the radio senses its channel busy.")
        String reads,

        @Schema(examples = "Held for a quarter of an hour, so that a download is no alarm.")
        String why,

        @Schema(examples = "Common practice, no source.") String source,

        Values shipped,

        @Schema(description = "Shipped values, with those that were set for everything laid over them")
        Values forAll) {

    static RuleJson of(Rule rule, RuleSet rules) {
        AlarmType type = rule.type();
        return new RuleJson(
                type.id(),
                type.title(),
                type.meaning(),
                Choice.word(rule.kind()),
                rule.unit(),
                rule.low(),
                rule.reads(),
                rule.why(),
                rule.source(),
                Values.of(rule.fields()),
                Values.of(rules.texts(type, RuleTarget.service())));
    }

    /** Values of a rule; what is left out is not set. */
    @Schema(name = "RuleValues")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record Values(
            @Schema(description = "Whether the rule is in use")
            Boolean enabled,

            @Schema(
                    description = "warning, minor, major or critical; of rules that know only one degree",
                    examples = "minor")
            String severity,

            @Schema(description = "A number from which a warning is raised, or off", examples = "50")
            String warning,

            @Schema(description = "The same for minor", examples = "70")
            String minor,

            @Schema(description = "The same for major", examples = "85")
            String major,

            @Schema(description = "The same for critical", examples = "off")
            String critical,

            @Schema(
                    description = "The figure at which the lowest level clears; higher ones clear at the same distance"
                            + " from their own threshold",
                    examples = "45")
            BigDecimal clear,

            @Schema(description = "Seconds for which it must hold before it is raised", examples = "900")
            Integer raiseAfter,

            @Schema(description = "Seconds for which it must be back before it clears", examples = "900")
            Integer clearAfter,

            @Schema(description = "Seconds within which a rule counts", examples = "3600")
            Integer window,

            @Schema(description = "What names begin with, separated by commas", examples = "setup, set-up")
            String words)
            implements ApiBody {

        static Values of(Map<RuleField, String> fields) {
            return new Values(
                    fields.containsKey(RuleField.ENABLED)
                            ? fields.get(RuleField.ENABLED).equals("yes")
                            : null,
                    fields.get(RuleField.SEVERITY),
                    fields.get(RuleField.WARNING),
                    fields.get(RuleField.MINOR),
                    fields.get(RuleField.MAJOR),
                    fields.get(RuleField.CRITICAL),
                    fields.containsKey(RuleField.CLEAR) ? new BigDecimal(fields.get(RuleField.CLEAR)) : null,
                    seconds(fields, RuleField.RAISE_AFTER),
                    seconds(fields, RuleField.CLEAR_AFTER),
                    seconds(fields, RuleField.WINDOW),
                    fields.get(RuleField.WORDS));
        }

        private static Integer seconds(Map<RuleField, String> fields, RuleField field) {
            return fields.containsKey(field) ? Integer.valueOf(fields.get(field)) : null;
        }

        Map<RuleField, String> fields() {
            Map<RuleField, String> fields = new EnumMap<>(RuleField.class);
            put(fields, RuleField.ENABLED, enabled == null ? null : enabled ? "yes" : "no");
            put(fields, RuleField.SEVERITY, severity);
            put(fields, RuleField.WARNING, warning);
            put(fields, RuleField.MINOR, minor);
            put(fields, RuleField.MAJOR, major);
            put(fields, RuleField.CRITICAL, critical);
            put(fields, RuleField.CLEAR, clear == null ? null : clear.toPlainString());
            put(fields, RuleField.RAISE_AFTER, raiseAfter);
            put(fields, RuleField.CLEAR_AFTER, clearAfter);
            put(fields, RuleField.WINDOW, window);
            put(fields, RuleField.WORDS, words);
            return fields;
        }

        private static void put(Map<RuleField, String> fields, RuleField field, Object value) {
            if (value != null) {
                fields.put(field, value.toString());
            }
        }
    }

    /** Values that somebody set for everything or for one place. */
    @Schema(name = "RuleOverride")
    record SetJson(
            @Schema(examples = "12") long id,

            @Schema(examples = "utilisation-high") String type,

            @Schema(description = "all, model, customer, site or device", examples = "site")
            String level,

            @Schema(description = "Of the model, customer, site or device; 0 for all", examples = "3")
            long targetId,

            @Schema(examples = "Hotel Brackwater – Harbour house")
            String target,

            Values values,

            @Schema(examples = "The ballroom is always this full in season.")
            String reason,

            @Schema(description = "Grows with each change", examples = "2")
            int version,

            @Schema(description = "Who changed it last", examples = "wren")
            String author,

            @Schema(examples = "2026-11-25T12:00:00Z") Instant at) {

        static SetJson of(RuleOverride one) {
            return new SetJson(
                    one.id(),
                    one.type().id(),
                    one.level().word(),
                    one.targetId(),
                    one.targetName(),
                    Values.of(one.fields()),
                    one.reason(),
                    one.version(),
                    one.author(),
                    one.at());
        }
    }

    /** What can be set for a place. */
    @Schema(name = "RuleOverrideEntry")
    record Entry(
            @Schema(description = "all, model, customer, site or device; stays as it was made", examples = "site")
            String level,

            @Schema(description = "Left out for all; stays as it was made", examples = "3")
            Long targetId,

            @Schema(description = "Only what differs") Values values,

            @Schema(examples = "The ballroom is always this full in season.")
            String reason)
            implements ApiBody {

        static Entry of(RuleOverride one) {
            return new Entry(one.level().word(), one.targetId(), Values.of(one.fields()), one.reason());
        }
    }

    /** Values of one rule as they hold for a device. */
    @Schema(name = "DeviceRule")
    record OfDevice(
            @Schema(examples = "utilisation-high") String type,

            @Schema(examples = "Channel busy") String title,

            Values values,

            @Schema(description = "Fields that are not as shipped")
            List<Origin> set) {

        static OfDevice of(Rule rule, RuleSet rules, RuleTarget target) {
            List<Origin> origins = rules.origins(rule.type(), target).entrySet().stream()
                    .filter(entry -> entry.getValue().isPresent())
                    .map(entry -> Origin.of(entry.getKey(), entry.getValue()))
                    .toList();
            return new OfDevice(
                    rule.type().id(), rule.type().title(), Values.of(rules.texts(rule.type(), target)), origins);
        }
    }

    /** Where the value of a field comes from. */
    @Schema(name = "RuleOrigin")
    record Origin(
            @Schema(examples = "major") String field,

            @Schema(description = "all, model, customer, site or device", examples = "site")
            String level,

            @Schema(description = "Of the values that were set", examples = "12")
            long override) {

        static Origin of(RuleField field, Optional<RuleOverride> from) {
            return new Origin(
                    field.key(),
                    from.map(one -> one.level().word()).orElse(""),
                    from.map(RuleOverride::id).orElse(0L));
        }
    }
}
