package org.roundsman.people;

/** Text from outside, made safe for a line of the log: no line breaks, no control characters, not endless. */
final class LogText {

    private static final int LONGEST = 80;

    private LogText() {}

    static String of(String text) {
        StringBuilder safe = new StringBuilder("\"");
        text.codePoints().limit(LONGEST).forEach(c -> append(safe, c));
        return safe.append(text.length() > LONGEST ? "…\"" : "\"").toString();
    }

    private static void append(StringBuilder safe, int c) {
        int type = Character.getType(c);
        boolean odd = Character.isISOControl(c)
                || type == Character.FORMAT
                || type == Character.LINE_SEPARATOR
                || type == Character.PARAGRAPH_SEPARATOR
                || type == Character.SURROGATE
                || c == '"'
                || c == '\\';
        if (odd) {
            safe.append(String.format("\\u%04x", c));
        } else {
            safe.appendCodePoint(c);
        }
    }
}
