package org.roundsman.visits;

/**
 * Power over Ethernet in words.
 *
 * @see "IEEE 802.3-2022, clauses 33 and 145: power that a device of each class may draw"
 */
final class PoeClass {

    private static final String[] WATTS = {"12.95", "3.84", "6.49", "12.95", "25.5", "40", "51", "62", "71.3"};
    private static final int HIGHEST_AF = 3;
    private static final int HIGHEST_AT = 4;

    private PoeClass() {}

    /** {@code PoE class 4 (IEEE 802.3at), up to 25.5 W at the device}. */
    static String words(int poeClass) {
        if (poeClass < 0 || poeClass >= WATTS.length) {
            return "PoE class " + poeClass;
        }
        String standard = poeClass <= HIGHEST_AF ? "802.3af" : poeClass <= HIGHEST_AT ? "802.3at" : "802.3bt";
        return "PoE class " + poeClass + " (IEEE " + standard + "), up to " + WATTS[poeClass] + " W at the device";
    }
}
