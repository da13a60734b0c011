package org.roundsman.demo.agent;

import org.roundsman.demo.agent.BerReader.Malformed;

/** The names that a request lists: where they stand in its octets, and their numbers. One thread at a time. */
final class Bindings {

    private final int[][] names = new int[Limits.VARIABLES][];
    private final int[] lengths = new int[Limits.VARIABLES];
    private final int[] froms = new int[Limits.VARIABLES];
    private final int[] tos = new int[Limits.VARIABLES];
    private byte[] octets;
    private int count;

    void read(BerReader in, int end) throws Malformed {
        octets = in.buffer();
        count = 0;
        while (!in.atEnd(end)) {
            if (count == Limits.VARIABLES) {
                throw new Malformed("more than " + Limits.VARIABLES + " variables");
            }
            int bindingEnd = in.head(Tags.SEQUENCE);
            if (names[count] == null) {
                names[count] = new int[Limits.NAME_NUMBERS];
            }
            froms[count] = in.position();
            lengths[count] = in.oid(names[count]);
            tos[count++] = in.position();
            in.skipTo(bindingEnd);
        }
    }

    int count() {
        return count;
    }

    int[] name(int binding) {
        return names[binding];
    }

    int length(int binding) {
        return lengths[binding];
    }

    int encodedLength(int binding) {
        return tos[binding] - froms[binding];
    }

    /** Writes the name as it came. */
    void write(int binding, BerWriter out) {
        out.bytes(octets, froms[binding], tos[binding] - froms[binding]);
    }
}
