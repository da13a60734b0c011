package org.roundsman.firmware.version;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import org.roundsman.firmware.Version;
import org.roundsman.firmware.VersionMark;
import org.roundsman.firmware.VersionScheme;

/**
 * Semantic Versioning 2.0.0, as strict as it is written: items 2, 9, 10 for the form, item 11 for the order. Build metadata is
 * shown and not compared; nor is a {@code v} in front, which is no part of the version but, as the specification says in its
 * questions, a common way to write that it is one.
 */
public final class Semantic implements VersionScheme.Rule {

    private static final String NUMBER = "(0|[1-9][0-9]*)";
    private static final String IDENTIFIER = "(?:0|[1-9][0-9]*|[0-9]*[a-zA-Z-][0-9a-zA-Z-]*)";
    private static final String BUILD = "[0-9A-Za-z-]+(?:\\.[0-9A-Za-z-]+)*";

    /** The form that the specification suggests in its questions; every part of it is bounded by the length of the text. */
    private static final java.util.regex.Pattern FORM = java.util.regex.Pattern.compile(NUMBER + "\\." + NUMBER + "\\."
            + NUMBER + "(?:-(" + IDENTIFIER + "(?:\\." + IDENTIFIER + ")*))?(?:\\+(" + BUILD + "))?");

    private static final int END = 0;
    private static final int NUMERIC = 1;
    private static final int ALPHANUMERIC = 2;
    private static final int RELEASE = 3;

    @Override
    public String words() {
        return "Semantic Versioning 2.0.0, item 11: major, minor and patch as numbers; then a pre-release is older than its"
                + " release, its identifiers are compared one by one, numbers below words; build metadata and a “v” in front"
                + " do not count.";
    }

    @Override
    public Version read(String text) {
        boolean prefixed = Scan.prefixed(text);
        String bare = prefixed ? text.substring(1) : text;
        Matcher form = FORM.matcher(bare);
        if (!form.matches()) {
            return new Version.Unreadable(text, why(bare));
        }
        List<Version.Part> parts = new ArrayList<>();
        if (prefixed) {
            parts.add(new Version.Part("prefix, not compared", text.substring(0, 1)));
        }
        List<VersionMark> marks = new ArrayList<>();
        for (int i = 1; i <= 3; i++) {
            parts.add(new Version.Part(List.of("major", "minor", "patch").get(i - 1), form.group(i)));
            marks.add(VersionMark.number(NUMERIC, form.group(i)));
        }
        if (form.group(4) == null) {
            marks.add(VersionMark.of(RELEASE));
        } else {
            preRelease(form.group(4), parts, marks);
        }
        if (form.group(5) != null) {
            parts.add(new Version.Part("build, not compared", form.group(5)));
        }
        return new Version.Read(text, parts, marks);
    }

    private static void preRelease(String identifiers, List<Version.Part> parts, List<VersionMark> marks) {
        for (String identifier : identifiers.split("\\.")) {
            parts.add(new Version.Part("pre-release", identifier));
            marks.add(
                    identifier.chars().allMatch(c -> Scan.digit((char) c))
                            ? VersionMark.number(NUMERIC, identifier)
                            : VersionMark.text(ALPHANUMERIC, identifier));
        }
        marks.add(VersionMark.of(END));
    }

    private static String why(String text) {
        if (text.matches("[0-9]+(\\.[0-9]+)?")) {
            return "Semantic Versioning wants three numbers: major, minor and patch";
        }
        if (text.matches("(.*[.-])?0[0-9]+([.+-].*)?")) {
            return "Semantic Versioning knows no numbers with a zero in front";
        }
        return "it does not have the form of Semantic Versioning, such as 1.4.2 or 1.4.2-rc.1";
    }
}
