package org.roundsman.firmware;

/**
 * One step in comparing two versions: the rank decides, then the number, then the text. Lists of marks are compared mark by
 * mark; every list ends with a mark that is nowhere else in it, so that no list is the beginning of another.
 *
 * @param rank what sort of thing stands there; the lower is the older
 * @param number digits without leading zeros, of any length; empty for nothing or zero
 * @param text compared by the code of its characters, as ASCII does
 */
public record VersionMark(int rank, String number, String text) implements Comparable<VersionMark> {

    /** A mark that is its rank only. */
    public static VersionMark of(int rank) {
        return new VersionMark(rank, "", "");
    }

    /** A number of any length. */
    public static VersionMark number(int rank, String digits) {
        int first = 0;
        while (first < digits.length() && digits.charAt(first) == '0') {
            first++;
        }
        return new VersionMark(rank, digits.substring(first), "");
    }

    public static VersionMark text(int rank, String text) {
        return new VersionMark(rank, "", text);
    }

    @Override
    public int compareTo(VersionMark other) {
        if (rank != other.rank) {
            return Integer.compare(rank, other.rank);
        }
        if (number.length() != other.number.length()) {
            return Integer.compare(number.length(), other.number.length());
        }
        int byNumber = number.compareTo(other.number);
        return byNumber != 0 ? byNumber : text.compareTo(other.text);
    }
}
