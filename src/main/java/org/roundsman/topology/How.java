package org.roundsman.topology;

/** How it is known on which port a device hangs, the strongest first. The name is what the table stores. */
public enum How {
    /** A person said so. */
    PERSON("set by a person"),
    /** One of both ends hears the other's LLDP announcements (IEEE 802.1AB). */
    LLDP("LLDP"),
    /** Its address was learnt on one port only, at the edge (BRIDGE-MIB, RFC 4188). */
    FORWARDING("forwarding table"),
    /** Nothing is known. */
    NOTHING("not known yet");

    private final String word;

    How(String word) {
        this.word = word;
    }

    /** What a page calls it. */
    public String word() {
        return word;
    }
}
