package org.roundsman.notices;

/** How far a message is. The name is what tables store. */
public enum OutboxState {
    WAITING("waiting"),
    SENT("sent"),
    /** Stands in a summary instead. */
    SUMMED("in a summary"),
    DEAD("given up"),
    DISMISSED("dismissed");

    private final String word;

    OutboxState(String word) {
        this.word = word;
    }

    /** The word on pages and in the API. */
    public String word() {
        return word;
    }
}
