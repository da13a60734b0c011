package org.roundsman.firmware;

/** How the firmware of a device stands against the policy. Never guessed: what cannot be told is {@link #NOT_KNOWN}. */
public enum FirmwareStatus {
    /** The recommended release, or another one that is accepted. */
    CURRENT("current"),
    /** Older than what is to run. */
    BEHIND("behind"),
    /** A release that was withdrawn, or one below the minimum of a security fix. */
    WITHDRAWN("withdrawn"),
    /** Newer than what is to run. */
    AHEAD_OF_POLICY("ahead of policy"),
    /** Not as the policy says, with a reason and an end that somebody entered. */
    EXCEPTED("excepted"),
    /** No version was read, no policy is there, or the version cannot be compared. */
    NOT_KNOWN("not known");

    private final String word;

    FirmwareStatus(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
