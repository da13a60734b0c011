package org.roundsman.web.rules;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.roundsman.rules.Rule;
import org.roundsman.rules.RuleField;
import org.roundsman.web.page.Words;

/** Values of rules as a person reads them. */
final class RuleWords {

    private static final int SECONDS = 60;

    private RuleWords() {}

    /** The values as they are shipped. */
    static String shipped(Rule rule) {
        return of(rule, rule.fields(), true);
    }

    /** These fields, which somebody set, in one line. */
    static String of(Rule rule, Map<RuleField, String> fields) {
        return of(rule, fields, false);
    }

    /**
     * All of these fields in one line.
     *
     * @param unsaid nobody set the severity
     */
    static String of(Rule rule, Map<RuleField, String> fields, boolean unsaid) {
        List<String> words = new ArrayList<>();
        for (RuleField field : RuleField.values()) {
            if (fields.containsKey(field)) {
                String text = fields.get(field);
                one(rule, field, unsaid && field == RuleField.SEVERITY ? severity(rule, text) : text, words);
            }
        }
        return String.join("; ", words);
    }

    /** A severity that nobody set: switches and gateways may have one of their own. */
    static String severity(Rule rule, String text) {
        return rule.carrying()
                .map(carrying -> text + ", " + carrying.lost().word() + " for switches and gateways, "
                        + carrying.passing().word() + " where only their management is lost")
                .orElse(text);
    }

    private static void one(Rule rule, RuleField field, String text, List<String> words) {
        switch (field) {
            case ENABLED -> {
                if (text.equals("no")) {
                    words.add("switched off");
                } else if (rule.kind() == Rule.Kind.ELSEWHERE) {
                    words.add("in use");
                }
            }
            case SEVERITY -> words.add(text);
            case WARNING, MINOR, MAJOR, CRITICAL -> {
                if (!text.equals(RuleField.OFF)) {
                    words.add(field.key()
                            + (rule.low() ? " at " : " from ")
                            + figure(rule, text)
                            + (rule.low() ? " or less" : ""));
                } else if (!RuleField.OFF.equals(rule.fields().get(field))) {
                    words.add("no " + field.key());
                }
            }
            case CLEAR -> words.add("clears at " + figure(rule, text));
            case RAISE_AFTER -> words.add("raised after " + length(text));
            case CLEAR_AFTER -> words.add("cleared after " + length(text));
            case WINDOW -> words.add("within " + length(text));
            case WORDS -> words.add("names that begin with " + text);
        }
    }

    private static String figure(Rule rule, String text) {
        String counted = text.equals("1") ? "time" : "times";
        String unit = rule.kind() == Rule.Kind.COUNT ? counted : rule.unit();
        return text + (unit.isEmpty() ? "" : "\u00a0" + unit);
    }

    static String length(String seconds) {
        long all = Long.parseLong(seconds);
        if (all == 0) {
            return "the first reading";
        }
        return all < SECONDS || all % SECONDS != 0 && all < 600
                ? all + "\u00a0s"
                : Words.length(java.time.Duration.ofSeconds(all));
    }

    /** Seconds as minutes, for a form. */
    static String minutes(String seconds) {
        return seconds.isEmpty()
                ? ""
                : new BigDecimal(seconds)
                        .divide(BigDecimal.valueOf(SECONDS), 2, java.math.RoundingMode.HALF_UP)
                        .stripTrailingZeros()
                        .toPlainString();
    }

    /** Minutes out of a form as whole seconds; what is no number stays as it is, for the rules to refuse. */
    static String seconds(String minutes) {
        try {
            return new BigDecimal(minutes.strip().replace(',', '.'))
                    .multiply(BigDecimal.valueOf(SECONDS))
                    .setScale(0, java.math.RoundingMode.HALF_UP)
                    .toPlainString();
        } catch (NumberFormatException e) {
            return minutes;
        }
    }
}
