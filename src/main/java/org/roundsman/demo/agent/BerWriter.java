package org.roundsman.demo.agent;

/**
 * Writes BER (ITU-T X.690, as far as SNMP needs it) from the end of a buffer to its front, so that each length is known
 * when it is written. One thread at a time.
 */
final class BerWriter {

    private final byte[] buffer;
    private int position;

    BerWriter(int size) {
        buffer = new byte[size];
        position = size;
    }

    void clear() {
        position = buffer.length;
    }

    byte[] buffer() {
        return buffer;
    }

    /** Where the first octet written stands. */
    int position() {
        return position;
    }

    /** Octets written. */
    int length() {
        return buffer.length - position;
    }

    /** Takes back what was written after that position was current. */
    void rewind(int earlier) {
        position = earlier;
    }

    void octet(int value) {
        buffer[--position] = (byte) value;
    }

    void bytes(byte[] from, int offset, int length) {
        position -= length;
        System.arraycopy(from, offset, buffer, position, length);
    }

    /** Puts tag and length before everything written since {@code end} was the position. */
    void head(int tag, int end) {
        int length = end - position;
        if (length < 0x80) {
            octet(length);
        } else if (length < 0x100) {
            octet(length);
            octet(0x81);
        } else {
            octet(length);
            octet(length >> 8);
            octet(0x82);
        }
        octet(tag);
    }

    void string(int tag, byte[] value) {
        int end = position;
        bytes(value, 0, value.length);
        head(tag, end);
    }

    /** A whole number in two's complement, as short as it can be. */
    void integer(int tag, long value) {
        int end = position;
        long rest = value;
        boolean more = true;
        while (more) {
            octet((int) rest);
            boolean negative = (rest & 0x80) != 0;
            rest >>= 8;
            more = rest != (negative ? -1 : 0);
        }
        head(tag, end);
    }

    /** The low 32 bits as a number without sign. */
    void unsigned32(int tag, long value) {
        integer(tag, value & 0xFFFF_FFFFL);
    }

    /** All 64 bits as a number without sign. */
    void unsigned64(int tag, long value) {
        int end = position;
        long rest = value;
        do {
            octet((int) rest);
            rest >>>= 8;
        } while (rest != 0);
        if ((buffer[position] & 0x80) != 0) {
            octet(0);
        }
        head(tag, end);
    }

    void empty(int tag) {
        octet(0);
        octet(tag);
    }
}
