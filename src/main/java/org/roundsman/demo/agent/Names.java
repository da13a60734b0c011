package org.roundsman.demo.agent;

import java.util.Arrays;

/** Object identifiers as text, numbers and octets. */
final class Names {

    private Names() {}

    static int[] numbers(String dotted) {
        return Arrays.stream(dotted.split("\\."))
                .mapToInt(Integer::parseUnsignedInt)
                .toArray();
    }

    /** With tag and length. */
    static byte[] encoded(int[] name) {
        BerWriter out = new BerWriter(6 * name.length + 8);
        int end = out.position();
        for (int i = name.length - 1; i > 1; i--) {
            number(out, name[i]);
        }
        number(out, name[0] * 40 + name[1]);
        out.head(Tags.OID, end);
        return Arrays.copyOfRange(out.buffer(), out.position(), out.buffer().length);
    }

    static byte[] encoded(String dotted) {
        return encoded(numbers(dotted));
    }

    private static void number(BerWriter out, int value) {
        int rest = value;
        out.octet(rest & 0x7F);
        rest >>>= 7;
        while (rest != 0) {
            out.octet(rest & 0x7F | 0x80);
            rest >>>= 7;
        }
    }
}
