package org.roundsman.snmp.session;

/**
 * Writes a BER message from its end to its beginning, so that each length is known when it is written (ITU-T X.690,
 * definite form). Not safe between threads.
 */
public final class Octets {

    private byte[] buffer = new byte[512];
    private int used;

    public Octets clear() {
        used = 0;
        return this;
    }

    /** Octets written so far. */
    public int length() {
        return used;
    }

    public Octets prepend(byte[] octets) {
        room(octets.length);
        used += octets.length;
        System.arraycopy(octets, 0, buffer, buffer.length - used, octets.length);
        return this;
    }

    public Octets prepend(int octet) {
        room(1);
        buffer[buffer.length - ++used] = (byte) octet;
        return this;
    }

    /** A tag and the length of everything written since {@code length()} was {@code end}. */
    public Octets wrap(int tag, int end) {
        int length = used - end;
        if (length < 0x80) {
            return prepend(length).prepend(tag);
        }
        int octets = 0;
        for (int rest = length; rest > 0; rest >>>= 8, octets++) {
            prepend(rest);
        }
        return prepend(0x80 | octets).prepend(tag);
    }

    public Octets string(byte[] octets) {
        int end = used;
        return prepend(octets).wrap(0x04, end);
    }

    /** An INTEGER in the fewest octets. */
    public Octets integer(int value) {
        int end = used;
        int rest = value;
        do {
            prepend(rest);
            rest >>= 8;
        } while (rest != 0 && rest != -1);
        boolean negative = buffer[buffer.length - used] < 0;
        if (negative != value < 0) {
            prepend(value < 0 ? 0xff : 0);
        }
        return wrap(0x02, end);
    }

    public byte[] toArray() {
        byte[] octets = new byte[used];
        System.arraycopy(buffer, buffer.length - used, octets, 0, used);
        return octets;
    }

    private void room(int more) {
        if (used + more > buffer.length) {
            byte[] larger = new byte[Math.max(buffer.length * 2, used + more)];
            System.arraycopy(buffer, buffer.length - used, larger, larger.length - used, used);
            buffer = larger;
        }
    }
}
