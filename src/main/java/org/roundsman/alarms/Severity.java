package org.roundsman.alarms;

import java.util.Arrays;

/**
 * Perceived severity (ITU-T X.733), with the numbers of RFC 8632 (module ietf-alarms, typedef severity). "Cleared" is none:
 * whether an alarm is cleared stands beside the severity that it last had. Ascending: a later one is worse.
 */
public enum Severity {
    /** How bad it is cannot be told. */
    INDETERMINATE(2),
    /** A fault may come; nobody feels it yet. */
    WARNING(3),
    /** A fault; the service goes on. */
    MINOR(4),
    /** The service suffers. */
    MAJOR(5),
    /** The service is gone. */
    CRITICAL(6);

    /** What a status change has in place of a severity when the alarm cleared (RFC 8632). */
    public static final int CLEARED_CODE = 1;

    private final int code;

    Severity(int code) {
        this.code = code;
    }

    /** The number that tables store and the API shows. */
    public int code() {
        return code;
    }

    /** The word on pages. */
    public String word() {
        return name().toLowerCase(java.util.Locale.ROOT);
    }

    public boolean atLeast(Severity other) {
        return compareTo(other) >= 0;
    }

    public static Severity worst(Severity a, Severity b) {
        return a.atLeast(b) ? a : b;
    }

    /**
     * The severity with that stored number.
     *
     * @throws IllegalArgumentException when none has it
     */
    public static Severity ofCode(int code) {
        return Arrays.stream(values())
                .filter(s -> s.code == code)
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no severity has number " + code));
    }
}
