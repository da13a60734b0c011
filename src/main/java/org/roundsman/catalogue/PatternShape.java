package org.roundsman.catalogue;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What a regular expression that compiles looks like: its groups, and in how many ways it may go on without a look at a
 * character, which no count of looks ends. Reads the expression from left to right; it knows no quotes and no comments, which
 * are refused.
 */
final class PatternShape {

    /** In how many ways a pattern may go on, multiplied: a sound one needs some dozens. */
    private static final int MOST_WAYS = 1_000;

    private static final Pattern COMMENTS = Pattern.compile("\\(\\?[a-zA-Z]*x");
    private static final Pattern OPENING =
            Pattern.compile("\\((?:\\?(?:[:=!>]|<[=!]|<[a-zA-Z][a-zA-Z0-9]*>|[a-zA-Z-]*[:)]))?");

    /** Letters that after a backslash stand for a place, or for a group that may have taken nothing. */
    private static final String PLACES = "bBAGzZk123456789";

    private final String expression;
    private final Deque<Integer> open = new ArrayDeque<>();
    private int at;
    private int inClass;
    private int groups;
    private int choices = 1;
    private long ways = 1;
    private boolean nothingYet = true;
    private boolean mayTakeNothing;
    private boolean emptyChoice;

    private PatternShape(String expression) {
        this.expression = expression;
    }

    /**
     * What is wrong with it, in plain words.
     *
     * @param counted the groups that Java finds in it
     */
    static Optional<String> fault(String expression, int counted) {
        if (expression.contains("\\Q")) {
            return Optional.of("quotes with \\Q; put a backslash before each sign instead");
        }
        if (COMMENTS.matcher(expression).find()) {
            return Optional.of("has comments in it; write it without (?x)");
        }
        PatternShape shape = new PatternShape(expression);
        shape.read();
        if (shape.emptyChoice) {
            return Optional.of("has an empty choice beside a |; put a question mark after the group instead");
        }
        if (shape.ways > MOST_WAYS) {
            return Optional.of(
                    "has too many choices: those of all groups with |, and two for each group that may be left"
                            + " out or repeated, multiplied, may make " + MOST_WAYS + " at most");
        }
        return shape.inClass > 0 || shape.groups != counted
                ? Optional.of("has groups that cannot be told apart; write it in a simpler way")
                : Optional.empty();
    }

    private void read() {
        while (at < expression.length()) {
            char sign = expression.charAt(at);
            if (sign == '\\') {
                escape();
            } else if (inClass > 0 || sign == '[') {
                inClass += sign == '[' ? 1 : sign == ']' ? -1 : 0;
                take(false);
            } else {
                plain(sign);
            }
        }
        close();
    }

    private void escape() {
        String next = at + 1 < expression.length() ? expression.substring(at + 1, at + 2) : "";
        at += next.equals("c") ? 2 : 1;
        take(inClass == 0 && !next.isEmpty() && PLACES.contains(next));
    }

    private void plain(char sign) {
        switch (sign) {
            case '(' -> open();
            case ')' -> {
                close();
                choices = open.isEmpty() ? 1 : open.pop();
                take(true);
            }
            case '|' -> {
                emptyChoice |= nothingYet;
                choices++;
                nothingYet = true;
                at++;
            }
            case '?', '*', '+', '{' -> repeat(sign);
            default -> take(sign == '^' || sign == '$');
        }
    }

    private void open() {
        Matcher opening = OPENING.matcher(expression).region(at, expression.length());
        String found = opening.lookingAt() ? opening.group() : "(";
        at += found.length();
        if (found.endsWith(")")) {
            return;
        }
        if (found.equals("(") || found.endsWith(">") && found.length() > 3) {
            groups++;
        }
        open.push(choices);
        choices = 1;
        nothingYet = true;
    }

    private void close() {
        emptyChoice |= nothingYet && choices > 1;
        multiply(choices);
    }

    private void repeat(char sign) {
        if (mayTakeNothing) {
            multiply(2);
        }
        int end = sign == '{' ? expression.indexOf('}', at) : at;
        at = end < 0 ? expression.length() : end;
        take(false);
    }

    private void multiply(int by) {
        ways = Math.min(ways * by, MOST_WAYS + 1L);
    }

    /** Goes on after a part of the expression. */
    private void take(boolean nothing) {
        at++;
        nothingYet = false;
        mayTakeNothing = nothing;
    }
}
