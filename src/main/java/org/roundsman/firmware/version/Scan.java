package org.roundsman.firmware.version;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.IntPredicate;
import org.roundsman.firmware.Version;
import org.roundsman.firmware.VersionMark;

/** Goes through a text from left to right and collects what it finds. Knows ASCII digits and letters only. */
final class Scan {

    private final String text;
    private final List<Version.Part> parts = new ArrayList<>();
    private final List<VersionMark> marks = new ArrayList<>();
    private int at;
    private int numbers;

    Scan(String text) {
        this.text = text;
    }

    static boolean digit(char sign) {
        return sign >= '0' && sign <= '9';
    }

    static boolean letter(char sign) {
        return sign >= 'a' && sign <= 'z' || sign >= 'A' && sign <= 'Z';
    }

    /** Whether the text begins with a v before a digit, as many write that what follows is a version. */
    static boolean prefixed(String text) {
        return new Scan(text).hasPrefix();
    }

    boolean atEnd() {
        return at >= text.length();
    }

    char sign() {
        return text.charAt(at);
    }

    /** The first character that is neither digit nor letter nor among these; whole also where Java needs two for it. */
    Optional<String> oddSign(IntPredicate known) {
        return text.codePoints()
                .filter(c -> c > 127 || !digit((char) c) && !letter((char) c) && !known.test(c))
                .mapToObj(Character::toString)
                .findFirst();
    }

    boolean isDigit() {
        return !atEnd() && digit(sign());
    }

    boolean isLetter() {
        return !atEnd() && letter(sign());
    }

    /** Whether a v stands before a digit here. */
    boolean hasPrefix() {
        return at + 1 < text.length() && (sign() == 'v' || sign() == 'V') && digit(text.charAt(at + 1));
    }

    /** Whether a digit or a letter comes after this sign. */
    boolean moreFollows() {
        return at + 1 < text.length() && (digit(text.charAt(at + 1)) || letter(text.charAt(at + 1)));
    }

    void next() {
        at++;
    }

    void skip(String name) {
        part(name, String.valueOf(sign()));
        next();
    }

    void takeNumber(int rank) {
        int from = at;
        while (isDigit()) {
            next();
        }
        String digits = text.substring(from, at);
        numbers++;
        part("number " + numbers, digits);
        mark(VersionMark.number(rank, digits));
    }

    String lettersAhead() {
        int to = at;
        while (to < text.length() && letter(text.charAt(to))) {
            to++;
        }
        return text.substring(at, to);
    }

    String takeLetters() {
        String letters = lettersAhead();
        at += letters.length();
        return letters;
    }

    void part(String name, String part) {
        parts.add(new Version.Part(name, part));
    }

    void mark(VersionMark mark) {
        marks.add(mark);
    }

    Version version() {
        return new Version.Read(text, parts, marks);
    }
}
