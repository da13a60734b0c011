package org.roundsman.firmware;

import java.util.Optional;
import org.roundsman.catalogue.FirmwareLine;
import org.roundsman.firmware.version.Dotted;
import org.roundsman.firmware.version.Pattern;
import org.roundsman.firmware.version.Semantic;

/**
 * How the versions of one line are read and compared. Over all versions that it can read, comparing is a total order; versions
 * that stand at the same place in it are the same release. Reading is bounded in length and in work and never throws.
 * Immutable and safe between threads.
 */
public final class VersionScheme {

    /** A longer text is no version. */
    public static final int LONGEST = 200;

    private final Rule rule;

    /** One way of reading. */
    public interface Rule {

        /** Reads a text that is neither empty nor too long. */
        Version read(String text);

        /** The rule in words, for people. */
        String words();
    }

    private VersionScheme(Rule rule) {
        this.rule = rule;
    }

    /**
     * The scheme of a line.
     *
     * @param pattern the regular expression of a line that has one; ignored with other schemes. One that cannot be used reads
     *     nothing: every version then says why
     */
    public static VersionScheme of(FirmwareLine.Scheme scheme, String pattern) {
        return new VersionScheme(
                switch (scheme) {
                    case DOTTED -> new Dotted();
                    case SEMANTIC -> new Semantic();
                    case PATTERN -> new Pattern(pattern);
                });
    }

    /** What is wrong with a pattern, as a person who enters it is told; empty when it can be used. */
    public static Optional<String> faultOf(String pattern) {
        return new Pattern(pattern).fault();
    }

    /** The rule in words. */
    public String words() {
        return rule.words();
    }

    public Version read(String text) {
        String bare = text.strip();
        if (bare.isEmpty()) {
            return new Version.Unreadable(bare, "there is no text");
        }
        if (bare.length() > LONGEST) {
            return new Version.Unreadable(
                    bare.substring(0, LONGEST) + "…", "it is longer than " + LONGEST + " characters");
        }
        return rule.read(bare);
    }

    /** How the first stands to the second; both read by this scheme. */
    public static Comparison compare(Version one, Version other) {
        if (one instanceof Version.Unreadable unreadable) {
            return Comparison.cannot(unreadable);
        }
        if (other instanceof Version.Unreadable unreadable) {
            return Comparison.cannot(unreadable);
        }
        return Comparison.of(order((Version.Read) one, (Version.Read) other));
    }

    private static int order(Version.Read one, Version.Read other) {
        int shared = Math.min(one.marks().size(), other.marks().size());
        for (int i = 0; i < shared; i++) {
            int order = one.marks().get(i).compareTo(other.marks().get(i));
            if (order != 0) {
                return order;
            }
        }
        return Integer.compare(one.marks().size(), other.marks().size());
    }
}
