package org.roundsman.warranty;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;

/** Writes the lines of an iCalendar object (RFC 5545, 3.1): CRLF, and no line over 75 octets. */
final class IcsText {

    /** RFC 5545, 3.1: octets without the line break. */
    private static final int LONGEST = 75;

    private static final DateTimeFormatter UTC = DateTimeFormatter.ofPattern("yyyyMMdd'T'HHmmss'Z'");
    private static final DateTimeFormatter DAY = DateTimeFormatter.BASIC_ISO_DATE;

    private final StringBuilder text = new StringBuilder();

    /** A line as it stands, folded where it is too long and never inside a character. */
    IcsText line(String content) {
        int room = LONGEST;
        for (int i = 0; i < content.length(); ) {
            int c = content.codePointAt(i);
            int octets = octets(c);
            if (octets > room) {
                text.append("\r\n ");
                room = LONGEST - 1;
            }
            text.appendCodePoint(c);
            room -= octets;
            i += Character.charCount(c);
        }
        text.append("\r\n");
        return this;
    }

    private static int octets(int c) {
        return c < 0x80 ? 1 : c < 0x800 ? 2 : c < 0x10000 ? 3 : 4;
    }

    /** A property of type TEXT (3.3.11). */
    IcsText text(String name, String words) {
        return line(name + ":" + escaped(words));
    }

    /** A moment in UTC (3.3.5). */
    IcsText moment(String name, Instant at) {
        return line(name + ":" + UTC.format(at.atOffset(ZoneOffset.UTC)));
    }

    /** A day without a time (3.3.4). */
    IcsText day(String name, LocalDate day) {
        return line(name + ";VALUE=DATE:" + DAY.format(day));
    }

    /** Backslash, semicolon, comma and line breaks are escaped, the colon is not; other control characters are left out. */
    static String escaped(String words) {
        StringBuilder out = new StringBuilder();
        words.replace("\r\n", "\n").codePoints().forEach(c -> {
            if (c == '\n') {
                out.append("\\n");
            } else if (c == '\\' || c == ';' || c == ',') {
                out.append('\\').append((char) c);
            } else if (c == '\t' || c >= ' ' && c != 0x7f && !(c >= 0xd800 && c <= 0xdfff)) {
                out.appendCodePoint(c);
            }
        });
        return out.toString();
    }

    byte[] octets() {
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }
}
