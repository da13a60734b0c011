package org.roundsman.claims;

/** Where a claim stands. */
public enum ClaimState {
    OPENED("opened"),
    /** The broken unit, or the request for a replacement, is with the maker or supplier. */
    SENT("sent"),
    REPLACED("replaced"),
    REFUSED("refused"),
    /** Nothing more will come of it. */
    CLOSED("closed");

    private final String word;

    ClaimState(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
