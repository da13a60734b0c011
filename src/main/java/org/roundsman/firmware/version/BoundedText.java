package org.roundsman.firmware.version;

/** A text that may be looked at so often: what would take for ever ends. For one thread. */
final class BoundedText implements CharSequence {

    private final String text;
    private int looks;

    BoundedText(String text, int looks) {
        this.text = text;
        this.looks = looks;
    }

    /** The text was looked at too often. */
    static final class TooMuchWork extends RuntimeException {
        private static final long serialVersionUID = 1;

        TooMuchWork() {
            super("", null, false, false);
        }
    }

    @Override
    public int length() {
        return text.length();
    }

    @Override
    public char charAt(int index) {
        if (looks-- <= 0) {
            throw new TooMuchWork();
        }
        return text.charAt(index);
    }

    @Override
    public CharSequence subSequence(int start, int end) {
        return text.subSequence(start, end);
    }

    @Override
    public String toString() {
        return text;
    }
}
