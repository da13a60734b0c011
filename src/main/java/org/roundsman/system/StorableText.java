package org.roundsman.system;

/** Text from devices and people on its way to the database: PostgreSQL text holds every character but U+0000. */
public final class StorableText {

    private StorableText() {}

    /** The text, with octet 0 written as {@code \x00}. */
    public static String of(String text) {
        return text.replace("\0", "\\x00");
    }

    /**
     * The text with U+FFFD for each half of a surrogate pair, as the Unicode Standard (3.9, "U+FFFD substitution of maximal
     * subparts") says of what cannot be written: for what we tell people of their own text.
     */
    public static String whole(String text) {
        return text.codePoints().noneMatch(StorableText::isHalf)
                ? text
                : text.codePoints()
                        .map(c -> isHalf(c) ? 0xFFFD : c)
                        .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                        .toString();
    }

    private static boolean isHalf(int codePoint) {
        return Character.getType(codePoint) == Character.SURROGATE;
    }

    /**
     * Whether the text comes back from the database as it went in. U+0000 is not taken; half of a surrogate pair, which no
     * encoding form of Unicode can write, would come back as another character.
     */
    public static boolean keeps(String text) {
        return text.codePoints().noneMatch(c -> c == 0 || isHalf(c));
    }
}
