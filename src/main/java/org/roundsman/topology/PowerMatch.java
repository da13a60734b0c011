package org.roundsman.topology;

/**
 * How a PoE port, which POWER-ETHERNET-MIB counts by group and port, was found to be a port of the switch. No standard
 * object joins the two (common practice, no source). The name is what the table stores.
 */
public enum PowerMatch {
    /** Its number is that of a bridge port. */
    BRIDGE_PORT("same number as the bridge port"),
    /** Its number is that of an interface. */
    INTERFACE("same number as the interface"),
    /** The n-th PoE port is taken for the n-th Ethernet port. */
    ORDER("by order only: check before relying on it");

    private final String word;

    PowerMatch(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
