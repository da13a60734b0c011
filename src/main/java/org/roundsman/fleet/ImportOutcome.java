package org.roundsman.fleet;

/** What a row of an import would do, or did. */
public enum ImportOutcome {
    NEW("new"),
    CHANGED("changed"),
    SAME("same"),
    REFUSED("refused");

    private final String word;

    ImportOutcome(String word) {
        this.word = word;
    }

    /** The word on pages and in addresses. */
    public String word() {
        return word;
    }
}
