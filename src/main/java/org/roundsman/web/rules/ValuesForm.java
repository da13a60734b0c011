package org.roundsman.web.rules;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeParseException;
import java.util.EnumMap;
import java.util.Map;
import org.jboss.resteasy.reactive.RestForm;
import org.roundsman.alarms.AlarmType;
import org.roundsman.fleet.InputRejected;
import org.roundsman.rules.RuleBook;
import org.roundsman.rules.RuleField;
import org.roundsman.rules.RuleLevel;

/**
 * What the form of values sends; times in minutes.
 *
 * @param level word of the level
 * @param target id of the customer, site, model or device; 0 for all
 * @param basedOn version that the person saw, 0 where nothing was set
 * @param from first day to try over, in UTC
 * @param to last day to try over, in UTC
 */
record ValuesForm(
        @RestForm String level,
        @RestForm String target,
        @RestForm String basedOn,
        @RestForm String enabled,
        @RestForm String severity,
        @RestForm String warning,
        @RestForm String minor,
        @RestForm String major,
        @RestForm String critical,
        @RestForm String clear,
        @RestForm String raiseAfter,
        @RestForm String clearAfter,
        @RestForm String window,
        @RestForm String words,
        @RestForm String reason,
        @RestForm String from,
        @RestForm String to) {

    RuleLevel forLevel() {
        return RuleLevel.of(text(level)).orElseThrow(() -> new InputRejected(Map.of("level", "choose one")));
    }

    long targetId() {
        return number(target);
    }

    int version() {
        return (int) number(basedOn);
    }

    private static long number(String text) {
        return text != null && text.matches("\\d{1,15}") ? Long.parseLong(text) : 0;
    }

    static String text(String value) {
        return value == null ? "" : value.strip();
    }

    /** As entered, with minutes. */
    Map<RuleField, String> entered() {
        Map<RuleField, String> fields = new EnumMap<>(RuleField.class);
        fields.put(RuleField.ENABLED, text(enabled));
        fields.put(RuleField.SEVERITY, text(severity));
        fields.put(RuleField.WARNING, text(warning));
        fields.put(RuleField.MINOR, text(minor));
        fields.put(RuleField.MAJOR, text(major));
        fields.put(RuleField.CRITICAL, text(critical));
        fields.put(RuleField.CLEAR, text(clear));
        fields.put(RuleField.RAISE_AFTER, text(raiseAfter));
        fields.put(RuleField.CLEAR_AFTER, text(clearAfter));
        fields.put(RuleField.WINDOW, text(window));
        fields.put(RuleField.WORDS, text(words));
        fields.values().removeIf(String::isEmpty);
        return fields;
    }

    RuleBook.Wish wish(AlarmType type) {
        Map<RuleField, String> fields = entered();
        fields.replaceAll((field, text) -> field.form() == RuleField.Form.SECONDS ? RuleWords.seconds(text) : text);
        return new RuleBook.Wish(type, forLevel(), targetId(), fields, text(reason));
    }

    Instant start() {
        return day("from", from).atStartOfDay(ZoneOffset.UTC).toInstant();
    }

    /** The end of the last day, or now where that day goes on. */
    Instant end(Instant now) {
        Instant end = day("to", to).plusDays(1).atStartOfDay(ZoneOffset.UTC).toInstant();
        return end.isAfter(now) ? now : end;
    }

    private static LocalDate day(String field, String text) {
        try {
            return LocalDate.parse(text(text));
        } catch (DateTimeParseException e) {
            throw new InputRejected(Map.of(field, "choose a day"));
        }
    }
}
