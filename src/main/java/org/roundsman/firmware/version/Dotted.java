package org.roundsman.firmware.version;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.roundsman.firmware.Version;
import org.roundsman.firmware.VersionMark;
import org.roundsman.firmware.VersionScheme;

/**
 * Numbers between dots, with suffixes. What may follow the same beginning, from old to new: {@code ~}, a pre-release word,
 * nothing, a number right behind a word, {@code -}, letters, {@code +}, a dot. That is Debian's order (deb-version, checked
 * with dpkg) but for pre-release words, which are older than the bare release with or without a sign before them, epochs,
 * and a sign at the end, which are not read. {@code _} and blanks count as {@code -}; a {@code v} in front does not count;
 * letters are compared without regard to case.
 */
public final class Dotted implements VersionScheme.Rule {

    /** From the earliest to the latest; our own order (common practice, no source). */
    private static final List<String> PRE_RELEASE =
            List.of("dev", "snapshot", "nightly", "alpha", "beta", "pre", "preview", "rc");

    private static final int TILDE = 0;
    private static final int PRE = 1;
    private static final int END = 2;
    private static final int NUMBER = 3;
    private static final int DASH = 4;
    private static final int LETTERS = 5;
    private static final int PLUS = 6;
    private static final int DOT = 7;

    @Override
    public String words() {
        return "Numbers are compared one after the other. From old to new after the same beginning: ~, a pre-release word ("
                + String.join(", ", PRE_RELEASE) + "), nothing more, -, letters, +, a dot.";
    }

    @Override
    public Version read(String text) {
        Scan scan = new Scan(text);
        Optional<String> odd = scan.oddSign(sign -> rank((char) sign) >= 0);
        if (odd.isPresent()) {
            return new Version.Unreadable(text, "the sign “" + odd.get() + "” is not part of dotted numbers");
        }
        if (scan.hasPrefix()) {
            scan.skip("prefix, not compared");
        }
        if (!scan.isDigit()) {
            return new Version.Unreadable(text, "it does not begin with a number");
        }
        while (!scan.atEnd()) {
            if (scan.isDigit()) {
                scan.takeNumber(NUMBER);
            } else if (scan.isLetter()) {
                word(scan);
            } else if (!scan.moreFollows()) {
                return new Version.Unreadable(text, "a number or letters must follow “" + scan.sign() + "”");
            } else {
                sign(scan);
            }
        }
        scan.mark(VersionMark.of(END));
        return scan.version();
    }

    private static void word(Scan scan) {
        String word = scan.takeLetters().toLowerCase(Locale.ROOT);
        int place = PRE_RELEASE.indexOf(word);
        if (place >= 0) {
            scan.part("pre-release word", word);
            scan.mark(VersionMark.number(PRE, String.valueOf(place + 1)));
        } else {
            scan.part("letters", word);
            scan.mark(VersionMark.text(LETTERS, word));
        }
    }

    /** The sign before a pre-release word does not count, but for a tilde and a plus. */
    private static void sign(Scan scan) {
        int rank = rank(scan.sign());
        scan.next();
        boolean dropped = (rank == DASH || rank == DOT)
                && PRE_RELEASE.contains(scan.lettersAhead().toLowerCase(Locale.ROOT));
        if (!dropped) {
            scan.mark(VersionMark.of(rank));
        }
    }

    private static int rank(char sign) {
        return switch (sign) {
            case '~' -> TILDE;
            case '-', '_', ' ' -> DASH;
            case '+' -> PLUS;
            case '.' -> DOT;
            default -> -1;
        };
    }
}
