package org.roundsman.demo.agent;

/** Sizes that agents keep to. */
final class Limits {

    /** Largest reply: what fits one Ethernet frame under IPv4 and UDP. */
    static final int MESSAGE_OCTETS = 1472;
    /** Largest request taken in. */
    static final int REQUEST_OCTETS = 65_507;
    /** RFC 3416: an object identifier has at most 128 numbers. */
    static final int NAME_NUMBERS = 128;
    /** Most variables of one reply; the message limit is reached long before. */
    static final int VARIABLES = 512;

    private Limits() {}
}
