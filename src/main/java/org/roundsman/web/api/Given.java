package org.roundsman.web.api;

import java.util.List;

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
