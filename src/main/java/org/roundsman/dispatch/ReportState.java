package org.roundsman.dispatch;

/** How far a report is. The name is what tables store. */
public enum ReportState {
    /** In the queue. */
    WAITING("waiting"),
    BUILDING("building"),
    /** Built; nobody has read it yet. */
    TO_REVIEW("to review"),
    /** One of us has read it and found it good. */
    REVIEWED("reviewed"),
    /** On its way: how it looks and what it says is settled, and no mail was taken yet. */
    SENDING("sending"),
    /** A mail server has taken a mail of it. From now on nothing of it changes any more. */
    SENT("sent"),
    /** It could not be built, or no recipient could be reached. */
    FAILED("failed");

    private final String word;

    ReportState(String word) {
        this.word = word;
    }

    /** The word on pages and in the API. */
    public String word() {
        return word;
    }

    /** Whether its remark and its look may be changed. */
    public boolean open() {
        return this != REVIEWED && this != SENDING && this != SENT;
    }
}
