package org.roundsman.topology;

import java.util.Arrays;

/** What a port does about power: pethPsePortDetectionStatus of POWER-ETHERNET-MIB (RFC 3621). */
public enum PowerState {
    DISABLED(1, "power switched off"),
    SEARCHING(2, "no power drawn"),
    DELIVERING(3, "power delivered"),
    FAULT(4, "power fault"),
    TEST(5, "power under test"),
    OTHER_FAULT(6, "power fault"),
    UNKNOWN(0, "power state not known");

    private final int code;
    private final String word;

    PowerState(int code, String word) {
        this.code = code;
        this.word = word;
    }

    public int code() {
        return code;
    }

    public String word() {
        return word;
    }

    public boolean faulty() {
        return this == FAULT || this == OTHER_FAULT;
    }

    /** The state with that number of the standard; unknown for any other. */
    public static PowerState of(int code) {
        return Arrays.stream(values()).filter(s -> s.code == code).findFirst().orElse(UNKNOWN);
    }
}
