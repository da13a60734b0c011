package org.roundsman.warranty;

/**
 * One step of how the cover of a unit was worked out, in words.
 *
 * @param text such as {@code bought 2024-02-29 + 36 months = 2027-02-28}
 */
public record CoverStep(Kind kind, String text) {

    /** What a step does. */
    public enum Kind {
        /** It gives cover, or says that none was promised. */
        COUNTS,
        /** Something that would be needed is not known. */
        MISSING,
        /** Worth knowing; changes nothing. */
        NOTE
    }

    static CoverStep counts(String text) {
        return new CoverStep(Kind.COUNTS, text);
    }

    static CoverStep missing(String text) {
        return new CoverStep(Kind.MISSING, text);
    }

    static CoverStep note(String text) {
        return new CoverStep(Kind.NOTE, text);
    }
}
