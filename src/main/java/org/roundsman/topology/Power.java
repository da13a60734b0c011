package org.roundsman.topology;

import java.util.OptionalInt;

/**
 * Power of a port.
 *
 * @param group and
 * @param port as POWER-ETHERNET-MIB counts them
 * @param state what it does
 * @param powerClass 0 to 4, known only while it delivers
 * @param enabled it may deliver; a port that may not and does not is no fault
 * @param match how it was found to belong to the port
 */
public record Power(int group, int port, PowerState state, OptionalInt powerClass, boolean enabled, PowerMatch match) {

    private static final int HIGHEST_CLASS = 4;

    /**
     * The class from pethPsePortPowerClassifications, whose value is one more than the class, and which is valid only
     * while the port delivers. RFC 3621 knows no class above 4.
     */
    public static OptionalInt classOf(PowerState state, int value) {
        boolean valid = state == PowerState.DELIVERING && value >= 1 && value <= HIGHEST_CLASS + 1;
        return valid ? OptionalInt.of(value - 1) : OptionalInt.empty();
    }

    /** A port that may deliver reports a fault. */
    public boolean faulty() {
        return enabled && state.faulty();
    }

    /** In words: {@code power delivered, class 4}. */
    public String words() {
        return state.word() + (powerClass.isPresent() ? ", class " + powerClass.getAsInt() : "");
    }
}
