package org.roundsman.snmp.walk;

/** The lines of a text, one after the other, with their numbers. Where every line ends in CR LF, the CR is dropped. */
final class TextLines {

    private final String text;
    private final boolean carriageReturns;
    private int at;
    private int number = 1;

    TextLines(String text) {
        this.text = text.startsWith("\uFEFF") ? text.substring(1) : text;
        this.carriageReturns = everyLineEndsInCarriageReturn(this.text);
    }

    private static boolean everyLineEndsInCarriageReturn(String text) {
        int feed = text.indexOf('\n');
        if (feed < 0) {
            return false;
        }
        for (; feed >= 0; feed = text.indexOf('\n', feed + 1)) {
            if (feed == 0 || text.charAt(feed - 1) != '\r') {
                return false;
            }
        }
        return true;
    }

    boolean hasNext() {
        return at < text.length();
    }

    /** The number of the line that {@link #next} gives, from 1. */
    int number() {
        return number;
    }

    String next() {
        String line = peek();
        int feed = text.indexOf('\n', at);
        at = feed < 0 ? text.length() : feed + 1;
        number++;
        return line;
    }

    String peek() {
        int feed = text.indexOf('\n', at);
        int end = feed < 0 ? text.length() : feed;
        boolean cut = carriageReturns && end > at && text.charAt(end - 1) == '\r';
        return text.substring(at, cut ? end - 1 : end);
    }

    /** A place to come back to. */
    Mark mark() {
        return new Mark(at, number);
    }

    void back(Mark mark) {
        at = mark.at;
        number = mark.number;
    }

    record Mark(int at, int number) {}
}
