package org.roundsman.catalogue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.regex.PatternSyntaxException;

/**
 * A regular expression that a person wrote to take versions apart. Matching always ends soon: versions are short, the pattern may
 * look at so many characters in all and no more, and what it may count and choose between is bounded, since counting and
 * choosing between nothing looks at none. Immutable.
 */
public final class VersionPattern {

    /** Characters of a pattern at most. */
    public static final int LONGEST = 200;

    /** Characters of a version at most; a longer one is not matched. */
    public static final int LONGEST_VERSION = 120;

    /** Looks at a character within one match: a sound pattern needs a few for each character of the version. */
    static final int MOST_LOOKS = 100_000;

    /** All counts of a pattern multiplied, such as 12 for {@code (a{3}){4}}. */
    private static final int MOST_COUNTED = 1_000;

    private static final Pattern COUNT = Pattern.compile("\\{(\\d+)(?:,(\\d*))?\\}");

    /** What sends a pattern astray that can read one text in many ways: long runs that end in something odd. */
    private static final List<String> RUNS =
            List.of("0", "1", "9", "a", "A", ".", "-", "_", " ", "1.", "a1", "1a", "-1", ".a");

    private static final String ODD = "!\u2603";

    private final Pattern pattern;

    private VersionPattern(Pattern pattern) {
        this.pattern = pattern;
    }

    /** How a match came out. */
    public sealed interface Match {}

    /**
     * The whole version fits.
     *
     * @param groups in their order; one that took no part is empty
     */
    public record Groups(List<String> groups) implements Match {}

    /** It does not fit, for a reason in plain words. */
    public record NoMatch(String reason) implements Match {}

    /**
     * The pattern.
     *
     * @throws IllegalArgumentException when {@link #fault} finds one, which the catalogue refuses
     */
    public static VersionPattern of(String pattern) {
        Optional<String> fault = fault(pattern);
        if (fault.isPresent()) {
            throw new IllegalArgumentException(fault.get());
        }
        return new VersionPattern(Pattern.compile(pattern));
    }

    /** What is wrong with a pattern in plain words; empty when nothing is. */
    public static Optional<String> fault(String pattern) {
        if (pattern.isBlank()) {
            return Optional.of("write a regular expression, such as v(\\d+)\\.(\\d+)");
        }
        if (pattern.length() > LONGEST) {
            return Optional.of("at most " + LONGEST + " characters");
        }
        if (counted(pattern) > MOST_COUNTED) {
            return Optional.of("counts too far: all numbers between braces, multiplied, may make " + MOST_COUNTED
                    + " at most; write + or * instead");
        }
        try {
            Pattern compiled = Pattern.compile(pattern);
            int groups = compiled.matcher("").groupCount();
            if (groups == 0) {
                return Optional.of("needs at least one group between parentheses, since groups are what is compared");
            }
            Optional<String> shape = PatternShape.fault(pattern, groups);
            if (shape.isPresent()) {
                return shape;
            }
            return new VersionPattern(compiled).astray()
                    ? Optional.of("can read one text in too many ways, so that a match may take for ever; do not let"
                            + " several repeats of the same characters follow each other, as in \\d*\\d*\\d*")
                    : Optional.empty();
        } catch (PatternSyntaxException e) {
            return Optional.of("no regular expression: " + e.getDescription()
                    + (e.getIndex() < 0 ? "" : ", near character " + (e.getIndex() + 1)));
        }
    }

    private static long counted(String pattern) {
        long product = 1;
        Matcher counts = COUNT.matcher(pattern);
        while (counts.find() && product <= MOST_COUNTED) {
            product *= Math.max(1, Math.max(number(counts.group(1)), number(counts.group(2))));
        }
        return product;
    }

    private static long number(String digits) {
        if (digits == null || digits.isEmpty()) {
            return 1;
        }
        return digits.length() > 4 ? MOST_COUNTED + 1L : Long.parseLong(digits);
    }

    private boolean astray() {
        return RUNS.stream()
                .flatMap(run -> List.of("", "v", "1.").stream().map(start -> start + run.repeat(100 / run.length())))
                .anyMatch(text -> looksTooMuch(text.substring(0, 100) + ODD));
    }

    private boolean looksTooMuch(String text) {
        try {
            pattern.matcher(new Watched(text)).matches();
            return false;
        } catch (TooManyLooks e) {
            return true;
        }
    }

    /** Takes a version apart. */
    public Match match(String version) {
        if (version.length() > LONGEST_VERSION) {
            return new NoMatch("is longer than " + LONGEST_VERSION + " characters");
        }
        try {
            Matcher matcher = pattern.matcher(new Watched(version));
            if (!matcher.matches()) {
                return new NoMatch("does not fit the pattern of the line");
            }
            List<String> groups = new ArrayList<>();
            for (int i = 1; i <= matcher.groupCount(); i++) {
                groups.add(matcher.group(i) == null ? "" : matcher.group(i));
            }
            return new Groups(List.copyOf(groups));
        } catch (TooManyLooks e) {
            return new NoMatch("takes the pattern of the line too long");
        }
    }

    /** Ends a match; it never leaves this class. */
    private static final class TooManyLooks extends RuntimeException {
        private static final long serialVersionUID = 1;

        TooManyLooks() {
            super("too many looks", null, false, false);
        }
    }

    /** A text that counts how often a character of it is looked at. Used by one match. */
    private static final class Watched implements CharSequence {
        private final String text;
        private int looks;

        Watched(String text) {
            this.text = text;
        }

        @Override
        public char charAt(int index) {
            if (++looks > MOST_LOOKS) {
                throw new TooManyLooks();
            }
            return text.charAt(index);
        }

        @Override
        public int length() {
            return text.length();
        }

        @Override
        public CharSequence subSequence(int start, int end) {
            return text.substring(start, end);
        }

        @Override
        public String toString() {
            return text;
        }
    }
}
