package org.roundsman.system;

/** Text from devices and people on its way to the database: PostgreSQL text holds every character but U+0000. */
public final class StorableText {

    private StorableText() {}

    /** The text, with octet 0 written as {@code \x00}. */
    public static String of(String text) {
        return text.replace("\0", "\\x00");
    }
}
