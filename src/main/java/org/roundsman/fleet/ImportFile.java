package org.roundsman.fleet;

import java.util.Arrays;

/**
 * One uploaded file.
 *
 * @param name as the sender calls it; it is only shown, and no file of ours is ever named by it
 * @param content its octets
 */
public record ImportFile(String name, byte[] content) {

    private static final int LONGEST_NAME = 120;

    /** The name without any path and without control characters. */
    public String shownName() {
        String last = name == null ? "" : name.substring(Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1);
        String plain = last.codePoints()
                .filter(c -> !Character.isISOControl(c) && c != 0x202E)
                .limit(LONGEST_NAME)
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                .toString()
                .strip();
        return plain.isEmpty() ? "file without a name" : plain;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof ImportFile file && name.equals(file.name) && Arrays.equals(content, file.content);
    }

    @Override
    public int hashCode() {
        return name.hashCode() * 31 + Arrays.hashCode(content);
    }

    @Override
    public String toString() {
        return shownName() + ", " + content.length + " octets";
    }
}
