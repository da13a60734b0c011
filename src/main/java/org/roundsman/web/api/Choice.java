package org.roundsman.web.api;

import java.util.Arrays;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** Names of enumerations as the API writes them: lower case, with hyphens. */
final class Choice {

    private Choice() {}

    static String word(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The value of that word; null for an unknown or missing one, which the feature refuses. */
    static <E extends Enum<E>> E of(Class<E> type, String word) {
        return Arrays.stream(type.getEnumConstants())
                .filter(value -> word(value).equals(word))
                .findFirst()
                .orElse(null);
    }

    /**
     * The value of a filter; empty where there is no filter.
     *
     * @throws ProblemException naming the filter and what it takes
     */
    static <E extends Enum<E>> Optional<E> filter(Class<E> type, String field, String word) {
        if (word == null || word.isEmpty()) {
            return Optional.empty();
        }
        E value = of(type, word);
        if (value == null) {
            String all =
                    Arrays.stream(type.getEnumConstants()).map(Choice::word).collect(Collectors.joining(", "));
            throw new ProblemException(Problem.refused(Map.of(field, "one of: " + all)));
        }
        return Optional.of(value);
    }
}
