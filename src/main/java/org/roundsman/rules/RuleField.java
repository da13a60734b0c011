package org.roundsman.rules;

import java.util.Arrays;
import java.util.Optional;
import org.roundsman.alarms.Severity;

/** What can be set of a rule. The key is what the table and the API hold. */
public enum RuleField {
    ENABLED("enabled", Form.SWITCH, "In use"),
    /** Of rules that know only one degree. */
    SEVERITY("severity", Form.SEVERITY, "Severity"),
    WARNING("warning", Form.LEVEL, "Warning from"),
    MINOR("minor", Form.LEVEL, "Minor from"),
    MAJOR("major", Form.LEVEL, "Major from"),
    CRITICAL("critical", Form.LEVEL, "Critical from"),
    /** The figure at which the lowest level clears; higher ones clear at the same distance from their own threshold. */
    CLEAR("clear", Form.FIGURE, "Clears at"),
    RAISE_AFTER("raiseAfter", Form.SECONDS, "Raised after"),
    CLEAR_AFTER("clearAfter", Form.SECONDS, "Cleared after"),
    /** Of rules that count: within how much time. */
    WINDOW("window", Form.SECONDS, "Counted within"),
    /** What names begin with, separated by commas. */
    WORDS("words", Form.WORDS, "Names begin with");

    /** What a field holds as text. */
    public enum Form {
        /** {@code yes} or {@code no}. */
        SWITCH,
        /** A severity's word. */
        SEVERITY,
        /** A number, or {@code off} for a level that is not used. */
        LEVEL,
        FIGURE,
        /** Whole seconds. */
        SECONDS,
        WORDS
    }

    /** In place of a threshold: this level is not used. */
    public static final String OFF = "off";

    private final String key;
    private final Form form;
    private final String title;

    RuleField(String key, Form form, String title) {
        this.key = key;
        this.form = form;
        this.title = title;
    }

    public String key() {
        return key;
    }

    public Form form() {
        return form;
    }

    /** What a page calls it. */
    public String title() {
        return title;
    }

    /** The severity whose threshold it is, if it is one. */
    public Optional<Severity> level() {
        return form == Form.LEVEL ? Optional.of(Severity.valueOf(name())) : Optional.empty();
    }

    /** The threshold of that severity; there is none of indeterminate. */
    public static RuleField of(Severity severity) {
        return valueOf(severity.name());
    }

    public static Optional<RuleField> byKey(String key) {
        return Arrays.stream(values()).filter(field -> field.key.equals(key)).findFirst();
    }
}
