package org.roundsman.warranty;

import java.util.Locale;

/** Names of uploaded files: for showing, and for saving them again. They never name a place in our file system. */
final class FileNames {

    private static final int LONGEST = 100;

    private FileNames() {}

    /** The last part of the path, without what means something in headers, paths or terminals, and with that ending. */
    static String safe(String uploaded, EvidenceKind kind) {
        String last = uploaded == null ? "" : uploaded.replaceAll("^.*[/\\\\]", "");
        StringBuilder kept = new StringBuilder();
        last.codePoints().filter(FileNames::harmless).forEach(kept::appendCodePoint);
        String name = kept.toString().strip().replaceAll("^[.\\s]+", "");
        String ending = "." + kind.ending();
        String stem = name.toLowerCase(Locale.ROOT).endsWith(ending)
                ? name.substring(0, name.length() - ending.length())
                : name.replaceAll("\\.[A-Za-z0-9]{1,5}$", "");
        return shortened(stem.strip().isEmpty() ? "evidence" : stem.strip()) + ending;
    }

    private static String shortened(String stem) {
        return stem.codePointCount(0, stem.length()) <= LONGEST
                ? stem
                : stem.substring(0, stem.offsetByCodePoints(0, LONGEST));
    }

    /** No controls, no signs that turn the direction of text, no halves of characters, nothing that headers quote. */
    private static boolean harmless(int c) {
        int type = Character.getType(c);
        return type != Character.CONTROL
                && type != Character.FORMAT
                && type != Character.SURROGATE
                && type != Character.UNASSIGNED
                && type != Character.LINE_SEPARATOR
                && type != Character.PARAGRAPH_SEPARATOR
                && "\"\\/:*?<>|;%".indexOf(c) < 0;
    }
}
