package org.roundsman.firmware.version;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.PatternSyntaxException;
import org.roundsman.firmware.Version;
import org.roundsman.firmware.VersionMark;
import org.roundsman.firmware.VersionScheme;

/**
 * By the groups of a person's regular expression, which must take the whole version; in the order in which they open. Two
 * groups of digits are compared as numbers of any length, others as text by the code of their characters; numbers come before
 * text. A group that takes nothing comes before one that takes something; only when its name begins with {@code pre}, after
 * it, as a release comes after its pre-releases. Where the pattern takes a version only with a {@code v} in front, or only
 * without, the other way of writing it is read like that one. Matching may look at so many characters and no more.
 */
public final class Pattern implements VersionScheme.Rule {

    private static final int LONGEST = 300;

    /** A sensible expression over {@link VersionScheme#LONGEST} characters looks at some thousand. */
    private static final int MOST_LOOKS = 200_000;

    private static final int ABSENT = 0;
    private static final int NUMBER = 1;
    private static final int TEXT = 2;
    private static final int ABSENT_LATE = 3;

    private final String expression;
    private final List<Group> groups;
    private final java.util.regex.Pattern compiled;
    private final String fault;

    public Pattern(String expression) {
        this.expression = expression;
        String wrong = "";
        java.util.regex.Pattern made = null;
        List<Group> found = List.of();
        try {
            if (expression.length() > LONGEST) {
                wrong = "the pattern is longer than " + LONGEST + " characters";
            } else if (expression.contains("\\Q")) {
                wrong = "the pattern quotes with \\Q; put a backslash before each sign instead";
            } else {
                made = java.util.regex.Pattern.compile(expression);
                found = Group.in(expression);
                wrong = fault(found.size(), made.matcher("").groupCount());
            }
        } catch (PatternSyntaxException e) {
            wrong = "the pattern cannot be read: " + e.getDescription() + " at sign " + (e.getIndex() + 1);
        }
        this.compiled = made;
        this.groups = found;
        this.fault = wrong;
    }

    private static String fault(int counted, int groups) {
        if (groups == 0) {
            return "the pattern has no group in round brackets to compare";
        }
        return counted == groups ? "" : "the groups of the pattern cannot be told apart; write it in a simpler way";
    }

    /** What is wrong with the expression; empty when it can be used. */
    public Optional<String> fault() {
        return fault.isEmpty() ? Optional.empty() : Optional.of(fault);
    }

    @Override
    public String words() {
        return fault.isEmpty()
                ? "The pattern " + expression
                        + " must take the whole version; its groups are compared in turn, digits as"
                        + " numbers, others as text. A group that takes nothing comes first, but last when its name begins"
                        + " with “pre”. A “v” in front may be there or not where the pattern takes only one of the two."
                : "The pattern " + expression + " cannot be used: " + fault + ".";
    }

    @Override
    public Version read(String text) {
        if (!fault.isEmpty()) {
            return new Version.Unreadable(text, fault);
        }
        try {
            for (String written : waysOfWriting(text)) {
                Matcher matcher = compiled.matcher(new BoundedText(written, MOST_LOOKS));
                if (matcher.matches()) {
                    return read(text, written, matcher);
                }
            }
            return new Version.Unreadable(text, "the pattern of the line does not take it");
        } catch (BoundedText.TooMuchWork | StackOverflowError e) {
            return new Version.Unreadable(text, "the pattern of the line takes too long over it");
        }
    }

    /** As it is written first: a pattern that takes it so may do with a v what it likes. */
    private static List<String> waysOfWriting(String text) {
        String bare = Scan.prefixed(text) ? text.substring(1) : text;
        return Scan.digit(bare.charAt(0)) ? List.of(text, bare, "v" + bare, "V" + bare) : List.of(text);
    }

    private Version read(String text, String written, Matcher matcher) {
        List<Version.Part> parts = new ArrayList<>();
        List<VersionMark> marks = new ArrayList<>();
        for (int i = 0; i < groups.size(); i++) {
            String taken = matcher.start(i + 1) < 0 ? "" : written.substring(matcher.start(i + 1), matcher.end(i + 1));
            parts.add(new Version.Part(groups.get(i).shown(i + 1), taken));
            marks.add(mark(groups.get(i), taken));
        }
        return new Version.Read(text, parts, marks);
    }

    private static VersionMark mark(Group group, String taken) {
        if (taken.isEmpty()) {
            return VersionMark.of(group.missingIsLate() ? ABSENT_LATE : ABSENT);
        }
        return taken.chars().allMatch(c -> Scan.digit((char) c))
                ? VersionMark.number(NUMBER, taken)
                : VersionMark.text(TEXT, taken);
    }
}
