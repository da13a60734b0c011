package org.roundsman.rules;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/**
 * For whom values are set. Ascending: what is set at a later level wins over an earlier one, field by field. The name is
 * what the table stores.
 */
public enum RuleLevel {
    ALL("all"),
    MODEL("model"),
    CUSTOMER("customer"),
    SITE("site"),
    DEVICE("device");

    private final String word;

    RuleLevel(String word) {
        this.word = word;
    }

    /** The word on pages and in the API. */
    public String word() {
        return word;
    }

    public static Optional<RuleLevel> of(String word) {
        String wanted = word.strip().toLowerCase(Locale.ROOT);
        return Arrays.stream(values())
                .filter(level -> level.word.equals(wanted))
                .findFirst();
    }
}
