package org.roundsman.triage;

/** How a device stands, as far as finding causes goes. */
public enum Standing {
    ANSWERS,
    /** It answers, but rejects our credentials: it is there and can be reached. */
    REFUSES,
    /** It missed its last round or two and is probably silent; too early to say. */
    MISSING,
    SILENT,
    /** Paused, never asked, or its rounds are overdue: it is evidence of nothing. */
    UNWATCHED;

    /** It missed at least its last round. */
    public boolean lost() {
        return this == MISSING || this == SILENT;
    }

    /** It answered its last round, gladly or not. */
    public boolean heard() {
        return this == ANSWERS || this == REFUSES;
    }
}
