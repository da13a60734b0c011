package org.roundsman.audit;

import java.util.Arrays;
import java.util.stream.Collectors;

/** Makes a question in PostgreSQL's text search out of what a person typed. */
public final class SearchWords {

    /** The signs that part words in the index, see function audit_words. */
    private static final String SIGNS = "[\\p{Punct}\\p{Cntrl}]+";

    private static final int MOST_WORDS = 20;

    private SearchWords() {}

    /**
     * All words must occur, each by its beginning; what is written without a space between must occur so. Empty when
     * there is nothing to look for.
     */
    public static String question(String typed) {
        return Arrays.stream(typed.strip().split("\\s+"))
                .limit(MOST_WORDS)
                .map(SearchWords::inOrder)
                .filter(part -> !part.isEmpty())
                .collect(Collectors.joining(" & "));
    }

    private static String inOrder(String word) {
        String pieces = Arrays.stream(word.split(SIGNS))
                .filter(piece -> !piece.isEmpty())
                .map(piece -> "'" + piece + "'")
                .collect(Collectors.joining(" <-> "));
        return pieces.isEmpty() ? "" : "(" + pieces + ":*)";
    }
}
