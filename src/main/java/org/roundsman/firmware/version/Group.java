package org.roundsman.firmware.version;

import java.util.ArrayList;
import java.util.List;

/**
 * A group of a regular expression that takes something.
 *
 * @param name empty where it has none
 */
record Group(String name) {

    /** Groups in the order in which they open, of an expression that compiles and does not quote. */
    static List<Group> in(String expression) {
        List<Group> groups = new ArrayList<>();
        int depth = 0;
        for (int i = 0; i < expression.length(); i++) {
            char sign = expression.charAt(i);
            if (sign == '\\') {
                i++;
            } else if (sign == '[') {
                depth++;
            } else if (sign == ']' && depth > 0) {
                depth--;
            } else if (sign == '(' && depth == 0) {
                add(groups, expression, i + 1);
            }
        }
        return groups;
    }

    private static void add(List<Group> groups, String expression, int inside) {
        if (!expression.startsWith("?", inside)) {
            groups.add(new Group(""));
        } else if (expression.startsWith("?<", inside) && Scan.letter(charAt(expression, inside + 2))) {
            groups.add(new Group(expression.substring(inside + 2, expression.indexOf('>', inside))));
        }
    }

    private static char charAt(String text, int place) {
        return place < text.length() ? text.charAt(place) : ' ';
    }

    boolean missingIsLate() {
        return name.startsWith("pre");
    }

    String shown(int number) {
        return name.isEmpty() ? "group " + number : "group " + name;
    }
}
