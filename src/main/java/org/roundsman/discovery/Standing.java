package org.roundsman.discovery;

/** How something that a sweep found stands to the fleet. */
public enum Standing {
    /** Nothing in the fleet of this customer is known to be it. */
    NEW("new"),
    /** It is in the fleet, at this address. */
    KNOWN("known"),
    /** It is in the fleet at this site, and its address changed. */
    NEW_ADDRESS("new address"),
    /** It is in the fleet, at another site of this customer. */
    MOVED("moved here"),
    /** What it says contradicts what the fleet has; a person decides. */
    DOUBTFUL("doubtful"),
    /** It speaks SNMP and refused every one of our credentials. */
    REFUSED("refused");

    private final String word;

    Standing(String word) {
        this.word = word;
    }

    /** The word on pages. */
    public String word() {
        return word;
    }
}
