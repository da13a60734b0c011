package org.roundsman.snmp.session;

/**
 * Reads the outermost layer of an SNMP message: which request of ours it may belong to. Reads nothing beyond the given
 * octets, whatever they say about lengths.
 */
final class Envelope {

    /** No number could be read: not an SNMP message. */
    static final int UNREADABLE = -1;

    private final byte[] octets;
    private int at;

    private Envelope(byte[] octets) {
        this.octets = octets;
    }

    /** The request number (v1, v2c) or message number (v3), or {@link #UNREADABLE}. */
    static int numberOf(byte[] datagram) {
        return new Envelope(datagram).number();
    }

    private int number() {
        if (enter(0x30) < 0) {
            return UNREADABLE;
        }
        int version = integer();
        if (version == 3) {
            return enter(0x30) < 0 ? UNREADABLE : integer();
        }
        if (version != 0 && version != 1) {
            return UNREADABLE;
        }
        int community = enter(0x04);
        if (community < 0) {
            return UNREADABLE;
        }
        at += community;
        return enter(-1) < 0 ? UNREADABLE : integer();
    }

    /** Steps behind a tag and its length; the length, or -1 when it is not there or reaches too far. */
    private int enter(int tag) {
        if (at + 2 > octets.length || (tag >= 0 && (octets[at] & 0xff) != tag)) {
            return -1;
        }
        int length = octets[at + 1] & 0xff;
        at += 2;
        if (length > 0x80) {
            int more = length & 0x7f;
            if (more > 4 || at + more > octets.length) {
                return -1;
            }
            length = 0;
            for (int i = 0; i < more; i++) {
                length = length << 8 | octets[at++] & 0xff;
            }
        }
        return length < 0 || length > octets.length - at ? -1 : length;
    }

    private int integer() {
        int length = enter(0x02);
        if (length < 1 || length > 4) {
            return UNREADABLE;
        }
        int value = octets[at++];
        for (int i = 1; i < length; i++) {
            value = value << 8 | octets[at++] & 0xff;
        }
        return value;
    }
}
