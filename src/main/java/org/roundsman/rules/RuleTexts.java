package org.roundsman.rules;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.roundsman.alarms.Severity;

/** Checks what people enter for a rule, and brings it into the one form in which it is kept. */
final class RuleTexts {

    private static final int LONGEST_WORDS = 300;
    private static final double MOST = 1e9;

    private final Rule rule;
    private final Map<RuleField, String> good = new EnumMap<>(RuleField.class);
    private final Map<String, String> faults = new LinkedHashMap<>();

    private RuleTexts(Rule rule) {
        this.rule = rule;
    }

    /** Reads these texts; blank ones count as not given. */
    static RuleTexts read(Rule rule, Map<RuleField, String> entered) {
        RuleTexts texts = new RuleTexts(rule);
        entered.forEach((field, text) -> {
            if (text != null && !text.isBlank()) {
                texts.one(field, text.strip());
            }
        });
        return texts;
    }

    Map<RuleField, String> good() {
        return good;
    }

    /** By the field's key. */
    Map<String, String> faults() {
        return faults;
    }

    /** Finds what does not go together once these values lie over those of all. */
    void checkTogether(Map<RuleField, String> under) {
        Map<RuleField, String> whole = new EnumMap<>(RuleField.class);
        whole.putAll(under);
        whole.putAll(good);
        if (!faults.isEmpty() || !rule.settable().contains(RuleField.CLEAR)) {
            return;
        }
        RuleValues values = RuleValues.of(whole);
        Optional<Severity> lowest = values.lowest();
        double sign = rule.low() ? -1 : 1;
        if (lowest.isEmpty()) {
            faults.put(RuleField.ENABLED.key(), "every level is off: switch the rule off instead");
            return;
        }
        if (sign * values.clear() > sign * values.level(lowest.get()).getAsDouble()) {
            faults.put(
                    RuleField.CLEAR.key(),
                    "must not be " + (rule.low() ? "below " : "above ") + "the "
                            + lowest.get().word() + " threshold");
        }
        double before = Double.NEGATIVE_INFINITY;
        for (Severity severity : Severity.values()) {
            if (values.level(severity).isPresent()) {
                double at = sign * values.level(severity).getAsDouble();
                if (at <= before) {
                    faults.put(severity.word(), "must be worse than the level below it");
                }
                before = at;
            }
        }
    }

    private void one(RuleField field, String text) {
        if (!rule.settable().contains(field)) {
            faults.put(field.key(), "this rule has no such value");
            return;
        }
        Optional<String> fine =
                switch (field.form()) {
                    case SWITCH -> oneOf(text, "yes", "no");
                    case SEVERITY -> oneOf(text, "warning", "minor", "major", "critical");
                    case LEVEL -> text.equalsIgnoreCase(RuleField.OFF) ? Optional.of(RuleField.OFF) : figure(text);
                    case FIGURE -> figure(text);
                    case SECONDS -> seconds(text);
                    case WORDS -> words(text);
                };
        fine.ifPresentOrElse(value -> good.put(field, value), () -> faults.put(field.key(), wanted(field)));
    }

    private String wanted(RuleField field) {
        return switch (field.form()) {
            case SWITCH -> "yes or no";
            case SEVERITY -> "warning, minor, major or critical";
            case LEVEL -> "a number that is not negative, or off";
            case FIGURE -> "a number that is not negative";
            case SECONDS ->
                "from 0 to " + longest() / 3_600 + " hours"
                        + (field == RuleField.WINDOW ? ", and at least a minute" : "");
            case WORDS -> "words with commas between them, at most " + LONGEST_WORDS + " characters";
        };
    }

    private static Optional<String> oneOf(String text, String... choices) {
        String lower = text.toLowerCase(Locale.ROOT);
        return Arrays.stream(choices).filter(lower::equals).findFirst();
    }

    private static Optional<String> figure(String text) {
        try {
            double value = Double.parseDouble(text.replace(',', '.'));
            return value >= 0 && value <= MOST
                    ? Optional.of(new java.math.BigDecimal(String.valueOf(value))
                            .stripTrailingZeros()
                            .toPlainString())
                    : Optional.empty();
        } catch (NumberFormatException e) {
            return Optional.empty();
        }
    }

    private long longest() {
        return RuleBook.LONGEST_MEMORY.toSeconds();
    }

    private Optional<String> seconds(String text) {
        try {
            long value = Long.parseLong(text);
            long least = rule.kind() == Rule.Kind.COUNT ? 60 : 0;
            return value >= least && value <= longest() ? Optional.of(String.valueOf(value)) : Optional.empty();
        } catch (NumberFormatException e) {
            return Optional.empty();
        }
    }

    private static Optional<String> words(String text) {
        boolean fits = text.length() <= LONGEST_WORDS && text.chars().noneMatch(Character::isISOControl);
        return fits && Arrays.stream(text.split(",")).anyMatch(word -> !word.isBlank())
                ? Optional.of(text)
                : Optional.empty();
    }
}
