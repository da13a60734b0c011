package org.roundsman.measure;

/** What a device is doing for a stretch of time (a span). The code is what tables store and is never reused. */
public enum Condition {
    ANSWERING(1),
    SILENT(2),
    /** Answers, but rejects our credentials. */
    REFUSING(3),
    /** We were not looking: paused, not yet reached, or our own poller was down. */
    UNWATCHED(4);

    private final int code;

    Condition(int code) {
        this.code = code;
    }

    public int code() {
        return code;
    }

    /** The word on pages. */
    public String word() {
        return name().toLowerCase(java.util.Locale.ROOT);
    }

    /**
     * The condition with that stored code.
     *
     * @throws IllegalArgumentException when none has it
     */
    public static Condition ofCode(int code) {
        for (Condition condition : values()) {
            if (condition.code == code) {
                return condition;
            }
        }
        throw new IllegalArgumentException("no condition has code " + code);
    }
}
