package org.roundsman.snmp.profile;

import java.util.Arrays;
import java.util.Optional;

/** How a raw value becomes a figure or a text: the key {@code as} of a profile. */
public enum Form {
    /** A number as it stands, or text. */
    PLAIN("plain"),
    /** A counter, as its growth per second. */
    RATE("rate"),
    /** A counter of octets, as bits per second. */
    BIT_RATE("bit-rate"),
    /** The share in per cent of one counter's growth in another's. */
    GROWTH("growth"),
    /** 0 to 255 for 0 to 100 %, as the BSS Load element of IEEE 802.11 has it. */
    BSS_LOAD("bss-load"),
    /** DateAndTime (RFC 2579), as the device's clock minus ours. */
    DATE_AND_TIME("date-and-time"),
    /** Six octets, as 00:00:5e:00:53:01. */
    MAC("mac"),
    /** Octets as hexadecimal digits. */
    HEX("hex");

    private final String word;

    Form(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }

    public boolean isCounter() {
        return this == RATE || this == BIT_RATE || this == GROWTH;
    }

    boolean isText() {
        return this == MAC || this == HEX;
    }

    static Optional<Form> byWord(String word) {
        return Arrays.stream(values()).filter(f -> f.word.equals(word)).findFirst();
    }
}
