package org.roundsman.notices.text;

/** Kinds of messages. The name is what tables store; the word is what receivers of webhooks see. */
public enum NoticeKind {
    RAISE("raise"),
    UPDATE("update"),
    ESCALATION("escalation"),
    CLEAR("clear"),
    SUMMARY("summary"),
    DIGEST("digest"),
    TEST("test");

    private final String word;

    NoticeKind(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }

    /** Whether the hourly bound holds it back: not what a person asked for, and not what comes once a day. */
    public boolean bounded() {
        return this == RAISE || this == UPDATE || this == ESCALATION || this == CLEAR;
    }
}
