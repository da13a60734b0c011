package org.roundsman.snmp;

/**
 * Something wrong with a profile.
 *
 * @param file its file or name
 * @param line counted from 1; 0 where no line is to blame
 * @param key the key in question, such as {@code tables[1].entry}, or empty
 * @param text what is wrong, and what would be right
 */
public record ProfileFault(String file, int line, String key, String text) {

    /** All in one line, as a log or a terminal shows it. */
    @Override
    public String toString() {
        return file + (line == 0 ? "" : " line " + line) + (key.isEmpty() ? "" : ", " + key) + ": " + text;
    }
}
