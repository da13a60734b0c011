package org.roundsman.claims;

/** What became of a unit that neither stands in a place nor lies in store. The name is what the table stores. */
public enum Fate {
    /** To the maker or supplier. */
    SENT_BACK("sent back"),
    SCRAPPED("scrapped");

    private final String word;

    Fate(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
