package org.roundsman.rules;

import java.time.Duration;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.roundsman.alarms.Severity;

/**
 * The values of a rule as they hold for something.
 *
 * @param enabled false: nothing is raised, and what is raised clears
 * @param severity of rules that know only one degree
 * @param levels the figure from which each severity is raised; a severity without one is not used
 * @param clear the figure at which the lowest level clears
 * @param raiseAfter for how long the figure must hold before an alarm is raised
 * @param clearAfter for how long it must be back before the alarm clears
 * @param window of rules that count: within how much time; else zero
 * @param words what names begin with, in lower case; of rules that look at names
 */
public record RuleValues(
        boolean enabled,
        Severity severity,
        Map<Severity, Double> levels,
        double clear,
        Duration raiseAfter,
        Duration clearAfter,
        Duration window,
        List<String> words) {

    public RuleValues {
        levels = Map.copyOf(levels);
        words = List.copyOf(words);
    }

    /** The threshold of that severity. */
    public OptionalDouble level(Severity severity) {
        Double at = levels.get(severity);
        return at == null ? OptionalDouble.empty() : OptionalDouble.of(at);
    }

    /** The least severity that is used. */
    public Optional<Severity> lowest() {
        return Arrays.stream(Severity.values()).filter(levels::containsKey).findFirst();
    }

    /** The longest time that must be looked back to know where a rule stands. */
    public Duration memory() {
        return List.of(raiseAfter, clearAfter, window).stream()
                .max(Duration::compareTo)
                .orElseThrow();
    }

    /** The values that these texts mean; every text must be one that {@link RuleTexts} found good. */
    static RuleValues of(Map<RuleField, String> fields) {
        Map<Severity, Double> levels = new EnumMap<>(Severity.class);
        fields.forEach((field, text) -> field.level()
                .filter(severity -> !text.equals(RuleField.OFF))
                .ifPresent(severity -> levels.put(severity, Double.parseDouble(text))));
        return new RuleValues(
                !"no".equals(fields.get(RuleField.ENABLED)),
                Severity.valueOf(
                        fields.getOrDefault(RuleField.SEVERITY, "minor").toUpperCase(Locale.ROOT)),
                levels,
                Double.parseDouble(fields.getOrDefault(RuleField.CLEAR, "0")),
                seconds(fields, RuleField.RAISE_AFTER),
                seconds(fields, RuleField.CLEAR_AFTER),
                seconds(fields, RuleField.WINDOW),
                words(fields.getOrDefault(RuleField.WORDS, "")));
    }

    private static Duration seconds(Map<RuleField, String> fields, RuleField field) {
        return Duration.ofSeconds(Long.parseLong(fields.getOrDefault(field, "0")));
    }

    private static List<String> words(String text) {
        return Arrays.stream(text.split(","))
                .map(word -> word.strip().toLowerCase(Locale.ROOT))
                .filter(word -> !word.isEmpty())
                .toList();
    }
}
