package org.roundsman.reports.document;

/** Whether a colour reads on white (WCAG 2.2, success criterion 1.4.3). */
final class Contrast {

    /** Least ratio for text of any size. */
    static final double LEAST = 4.5;

    static final String BLACK = "#000000";

    private Contrast() {}

    /** The colour itself where it reads on white, else black. */
    static String readable(String colour) {
        return colour.matches("#[0-9a-fA-F]{6}") && toWhite(colour) >= LEAST ? colour : BLACK;
    }

    /** @param colour {@code #rrggbb} */
    static double toWhite(String colour) {
        int rgb = Integer.parseInt(colour.substring(1), 16);
        double luminance =
                0.2126 * linear(rgb >> 16 & 0xff) + 0.7152 * linear(rgb >> 8 & 0xff) + 0.0722 * linear(rgb & 0xff);
        return 1.05 / (luminance + 0.05);
    }

    private static double linear(int octet) {
        double share = octet / 255.0;
        return share <= 0.04045 ? share / 12.92 : Math.pow((share + 0.055) / 1.055, 2.4);
    }
}
