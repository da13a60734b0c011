package org.roundsman.profiles;

import java.util.ArrayList;
import java.util.List;

/** Which lines differ between two texts: the longest common subsequence stays, as diff tools usually have it. */
public final class TextDifference {

    /** Beyond so many pairs of differing lines, everything between first and last difference counts as changed. */
    private static final long MOST_PAIRS = 4_000_000;

    private TextDifference() {}

    /** What became of a line. */
    public enum Kind {
        SAME,
        REMOVED,
        ADDED
    }

    /**
     * One line.
     *
     * @param before its number in the first text, 0 where it is not there
     * @param after its number in the second text, 0 where it is not there
     */
    public record Line(Kind kind, int before, int after, String text) {}

    /** All lines of both texts in order. */
    public static List<Line> between(String before, String after) {
        List<String> a = before.lines().toList();
        List<String> b = after.lines().toList();
        int head = 0;
        while (head < a.size() && head < b.size() && a.get(head).equals(b.get(head))) {
            head++;
        }
        int tail = 0;
        while (tail < a.size() - head
                && tail < b.size() - head
                && a.get(a.size() - 1 - tail).equals(b.get(b.size() - 1 - tail))) {
            tail++;
        }
        List<Line> lines = new ArrayList<>();
        for (int i = 0; i < head; i++) {
            lines.add(new Line(Kind.SAME, i + 1, i + 1, a.get(i)));
        }
        middle(lines, a.subList(head, a.size() - tail), b.subList(head, b.size() - tail), head);
        for (int i = tail; i > 0; i--) {
            lines.add(new Line(Kind.SAME, a.size() - i + 1, b.size() - i + 1, a.get(a.size() - i)));
        }
        return lines;
    }

    private static void middle(List<Line> lines, List<String> a, List<String> b, int offset) {
        boolean compare = (long) a.size() * b.size() <= MOST_PAIRS;
        int[][] common = compare ? common(a, b) : null;
        int i = 0;
        int j = 0;
        while (i < a.size() || j < b.size()) {
            boolean both = i < a.size() && j < b.size();
            if (both && compare && a.get(i).equals(b.get(j))) {
                lines.add(new Line(Kind.SAME, offset + i + 1, offset + j + 1, a.get(i)));
                i++;
                j++;
            } else if (i < a.size() && (!both || !compare || common[i + 1][j] >= common[i][j + 1])) {
                lines.add(new Line(Kind.REMOVED, offset + i + 1, 0, a.get(i)));
                i++;
            } else {
                lines.add(new Line(Kind.ADDED, 0, offset + j + 1, b.get(j)));
                j++;
            }
        }
    }

    private static int[][] common(List<String> a, List<String> b) {
        int[][] common = new int[a.size() + 1][b.size() + 1];
        for (int i = a.size() - 1; i >= 0; i--) {
            for (int j = b.size() - 1; j >= 0; j--) {
                common[i][j] = a.get(i).equals(b.get(j))
                        ? common[i + 1][j + 1] + 1
                        : Math.max(common[i + 1][j], common[i][j + 1]);
            }
        }
        return common;
    }
}
