package org.roundsman.demo.agent;

/** Reads BER of definite length from a buffer. One thread at a time. */
final class BerReader {

    /** What was read is not what SNMP sends. */
    static final class Malformed extends Exception {
        private static final long serialVersionUID = 1;

        Malformed(String message) {
            // datagrams of strangers are no news: no stack trace is kept
            super(message, null, false, false);
        }
    }

    private byte[] buffer;
    private int position;
    private int limit;
    private int tag;

    void over(byte[] bytes, int from, int to) {
        buffer = bytes;
        position = from;
        limit = to;
    }

    byte[] buffer() {
        return buffer;
    }

    int position() {
        return position;
    }

    int limit() {
        return limit;
    }

    void skipTo(int next) {
        position = next;
    }

    boolean atEnd(int end) {
        return position >= end;
    }

    int tag() {
        return tag;
    }

    /** Reads tag and length; returns where the value ends. The position is then at the value. */
    int head() throws Malformed {
        tag = octet();
        int length = octet();
        if (length > 0x7F) {
            int count = length & 0x7F;
            if (count == 0 || count > 3) {
                throw new Malformed("length of " + count + " octets");
            }
            length = 0;
            for (int i = 0; i < count; i++) {
                length = length << 8 | octet();
            }
        }
        if (length > limit - position) {
            throw new Malformed("value ends after the message");
        }
        return position + length;
    }

    int head(int expected) throws Malformed {
        int end = head();
        if (tag != expected) {
            throw new Malformed("tag " + tag + " where " + expected + " should stand");
        }
        return end;
    }

    int integer() throws Malformed {
        int end = head(Tags.INTEGER);
        int length = end - position;
        if (length < 1 || length > 4) {
            throw new Malformed("integer of " + length + " octets");
        }
        int value = buffer[position];
        for (int i = 1; i < length; i++) {
            value = value << 8 | buffer[position + i] & 0xFF;
        }
        position = end;
        return value;
    }

    byte[] string() throws Malformed {
        int end = head(Tags.OCTET_STRING);
        byte[] value = java.util.Arrays.copyOfRange(buffer, position, end);
        position = end;
        return value;
    }

    /** Reads an object identifier into {@code into}; returns how many numbers it has. */
    int oid(int[] into) throws Malformed {
        int end = head(Tags.OID);
        if (position == end) {
            throw new Malformed("empty object identifier");
        }
        int count = 1;
        while (position < end) {
            if (count == into.length) {
                throw new Malformed("object identifier of more than " + into.length + " numbers");
            }
            into[count++] = number(end);
        }
        int both = into[1];
        into[0] = Integer.compareUnsigned(both, 80) >= 0 ? 2 : both / 40;
        into[1] = both - 40 * into[0];
        return count;
    }

    private int number(int end) throws Malformed {
        int value = 0;
        while (position < end) {
            int octet = buffer[position++];
            value = value << 7 | octet & 0x7F;
            if (octet >= 0) {
                return value;
            }
        }
        throw new Malformed("object identifier breaks off");
    }

    private int octet() throws Malformed {
        if (position >= limit) {
            throw new Malformed("message breaks off");
        }
        return buffer[position++] & 0xFF;
    }
}
