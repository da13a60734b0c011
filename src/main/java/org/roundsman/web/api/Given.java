package org.roundsman.web.api;

import java.util.List;
import java.util.Map;

/** What was given, or what stands for nothing. */
final class Given {

    private Given() {}

    static String text(String value) {
        return value == null ? "" : value;
    }

    static <T> T or(T value, T otherwise) {
        return value == null ? otherwise : value;
    }

    /** Without the holes that JSON lists may have. */
    static <T> List<T> list(List<T> values) {
        return values == null
                ? List.of()
                : values.stream().filter(java.util.Objects::nonNull).toList();
    }

    /**
     * A whole number out of the address; null where none is given.
     *
     * @throws ProblemException naming the parameter when it is none
     */
    static Long number(String parameter, String text) {
        try {
            return text == null || text.isEmpty() ? null : Long.valueOf(text);
        } catch (NumberFormatException e) {
            throw new ProblemException(Problem.refused(Map.of(parameter, "must be a whole number")));
        }
    }

    /** Whether every word of a search occurs in one of the texts. */
    static boolean fits(String search, String... texts) {
        String all = String.join(" ", texts).toLowerCase(java.util.Locale.ROOT);
        return text(search)
                .strip()
                .toLowerCase(java.util.Locale.ROOT)
                .lines()
                .flatMap(line -> java.util.Arrays.stream(line.split("\\s+")))
                .allMatch(all::contains);
    }
}
