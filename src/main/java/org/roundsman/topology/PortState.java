package org.roundsman.topology;

import java.util.Arrays;

/** Operational state of a port: ifOperStatus of IF-MIB (RFC 2863). */
public enum PortState {
    UP(1, "up"),
    DOWN(2, "down"),
    TESTING(3, "testing"),
    UNKNOWN(4, "state not known"),
    DORMANT(5, "dormant"),
    NOT_PRESENT(6, "not present"),
    LOWER_LAYER_DOWN(7, "down below");

    private final int code;
    private final String word;

    PortState(int code, String word) {
        this.code = code;
        this.word = word;
    }

    public int code() {
        return code;
    }

    public String word() {
        return word;
    }

    /** The state with that number of the standard; unknown for any other. */
    public static PortState of(int code) {
        return Arrays.stream(values()).filter(s -> s.code == code).findFirst().orElse(UNKNOWN);
    }
}
