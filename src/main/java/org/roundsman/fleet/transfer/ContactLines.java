package org.roundsman.fleet.transfer;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.roundsman.fleet.SiteContact;

/**
 * Contacts as lines of text, {@code name | duty | phone | e-mail}. A bar, a backslash or a line break that belongs to the
 * text is written with a backslash before it ({@code \|}, {@code \\}, {@code \n}).
 */
final class ContactLines {

    private static final int PARTS = 4;

    /** The order in which contacts are compared and written; people give them none. */
    static final Comparator<SiteContact> ORDER = Comparator.comparing((SiteContact c) -> c.name)
            .thenComparing(c -> c.duty)
            .thenComparing(c -> c.phone)
            .thenComparing(c -> c.email);

    private ContactLines() {}

    static String write(List<SiteContact> contacts) {
        return contacts.stream().sorted(ORDER).map(ContactLines::line).collect(Collectors.joining("\n"));
    }

    private static String line(SiteContact c) {
        String line = Stream.of(c.name, c.duty, c.phone, c.email)
                .map(ContactLines::escaped)
                .collect(Collectors.joining(" | "));
        return line.replaceFirst("( \\| )+$", "");
    }

    private static String escaped(String part) {
        return part.replace("\\", "\\\\").replace("|", "\\|").replaceAll("\r\n?|\n", "\\\\n");
    }

    /**
     * Reads such lines; empty ones are passed over.
     *
     * @throws IllegalArgumentException naming the line with too many parts
     */
    static List<SiteContact> read(String text) {
        return text.lines()
                .filter(line -> !line.isBlank())
                .map(ContactLines::contact)
                .sorted(ORDER)
                .toList();
    }

    private static SiteContact contact(String line) {
        List<String> parts = parts(line);
        if (parts.size() > PARTS) {
            throw new IllegalArgumentException("“" + line + "” has more than four parts; write one contact a line as"
                    + " name | duty | phone | e-mail, and \\| for a bar that belongs to the text");
        }
        while (parts.size() < PARTS) {
            parts.add("");
        }
        return new SiteContact(parts.get(0), parts.get(1), parts.get(2), parts.get(3));
    }

    private static List<String> parts(String line) {
        List<String> parts = new ArrayList<>();
        StringBuilder part = new StringBuilder();
        for (int i = 0; i < line.length(); i++) {
            char c = line.charAt(i);
            if (c == '\\' && i + 1 < line.length()) {
                i++;
                part.append(line.charAt(i) == 'n' ? '\n' : line.charAt(i));
            } else if (c == '|') {
                parts.add(part.toString().strip());
                part.setLength(0);
            } else {
                part.append(c);
            }
        }
        parts.add(part.toString().strip());
        return parts;
    }
}
