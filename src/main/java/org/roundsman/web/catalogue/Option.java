package org.roundsman.web.catalogue;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.Function;

/** One line of a list to choose from. */
record Option(String value, String text, boolean chosen) {

    /** An empty one first, then one for each. */
    static <T> List<Option> of(
            String none, List<T> all, Function<T, String> value, Function<T, String> text, String chosen) {
        List<Option> options = new ArrayList<>();
        options.add(new Option("", none, chosen.isEmpty()));
        all.forEach(one ->
                options.add(new Option(value.apply(one), text.apply(one), Objects.equals(value.apply(one), chosen))));
        return options;
    }
}
