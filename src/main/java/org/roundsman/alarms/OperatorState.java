package org.roundsman.alarms;

/** What people did with an alarm (RFC 8632: operator-state). The name is what tables store. */
public enum OperatorState {
    NONE("new"),
    /** Somebody deals with it. */
    ACK("acknowledged"),
    /** Held to be resolved by a person; does not clear it. */
    CLOSED("closed"),
    /** Put aside until a time, with a reason; notifies nobody. */
    SHELVED("shelved");

    private final String word;

    OperatorState(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
