package org.roundsman.snmp;

/** One value of a table, as the device sent it. */
public sealed interface TableValue {

    /** INTEGER, Counter, Gauge or TimeTicks; a Counter64 of 2 to the 63rd and more is negative. */
    record Whole(long number) implements TableValue {}

    /** OCTET STRING, as it came. */
    record Octets(byte[] octets) implements TableValue {}

    /** Anything else, as it prints. */
    record Other(String text) implements TableValue {}
}
