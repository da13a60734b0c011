package org.roundsman.firmware;

import java.util.List;

/** A version as a line of firmware reads it. What cannot be read is a value too: it is never guessed what it may mean. */
public sealed interface Version {

    /** As the device or a person wrote it, without blanks around it. */
    String text();

    /**
     * A part as pages show it.
     *
     * @param name what it is, such as {@code number 2} or {@code pre-release word}
     * @param text as it stands in the version; empty where a pattern's group took nothing
     */
    record Part(String name, String text) {}

    /**
     * A version that can be compared with every other one that its line can read.
     *
     * @param marks what decides its place in the order
     */
    record Read(String text, List<Part> parts, List<VersionMark> marks) implements Version {
        public Read {
            parts = List.copyOf(parts);
            marks = List.copyOf(marks);
        }
    }

    /**
     * A text that the line cannot read.
     *
     * @param reason why, in words that follow "cannot be compared:"
     */
    record Unreadable(String text, String reason) implements Version {}
}
