package org.roundsman.topology;

/**
 * A power supply for ports: pethMainPseEntry of POWER-ETHERNET-MIB (RFC 3621).
 *
 * @param group which
 * @param state 1 on, 2 off, 3 faulty, 0 not known
 * @param watts nominal
 * @param usedWatts measured, of the whole supply: the standard knows no figure of one port
 */
public record Supply(int group, int state, int watts, int usedWatts) {

    private static final int ON = 1;
    private static final int OFF = 2;
    private static final int FAULTY = 3;

    /** In words: {@code on, 120 of 370 W}. */
    public String words() {
        String word =
                switch (state) {
                    case ON -> "on";
                    case OFF -> "off";
                    case FAULTY -> "faulty";
                    default -> "state not known";
                };
        return word + ", " + usedWatts + " of " + watts + " W";
    }
}
