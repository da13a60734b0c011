package org.roundsman.discovery;

/** Where a sweep stands. The name is what the table stores. */
public enum SweepState {
    RUNNING("running"),
    DONE("done"),
    CANCELLED("cancelled");

    private final String word;

    SweepState(String word) {
        this.word = word;
    }

    /** The word on pages. */
    public String word() {
        return word;
    }
}
