package org.roundsman.fleet.transfer;

/**
 * Keeps spreadsheet programs from running a field as a formula (OWASP ASVS 5.0, 1.2.10): a field that begins with = + - @,
 * a tab or NUL gets a leading apostrophe, and so does one that begins with apostrophes and then one of those, so that
 * {@link #off} gives back exactly what {@link #on} got.
 */
final class Guard {

    private static final String STARTS = "=+-@\t\0";

    private Guard() {}

    static String on(String field) {
        return dangerous(field, 0) ? "'" + field : field;
    }

    /** Takes one apostrophe off where {@link #on} would have put it. */
    static String off(String field) {
        return field.startsWith("'") && dangerous(field, 1) ? field.substring(1) : field;
    }

    private static boolean dangerous(String field, int from) {
        int i = from;
        while (i < field.length() && field.charAt(i) == '\'') {
            i++;
        }
        return i < field.length() && STARTS.indexOf(field.charAt(i)) >= 0;
    }
}
