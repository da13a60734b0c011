package org.roundsman.reports.document;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Builds a table for people; the first cell of a row names it. */
final class Grid {

    private static final int SHORT = 16;

    private final String title;
    private final List<String> columns;
    private final List<List<String>> rows = new ArrayList<>();
    private Set<Integer> numbers = Set.of();
    private Set<Integer> moments = Set.of();

    /** @param title for those who do not see the table */
    Grid(String title, String... columns) {
        this.title = title;
        this.columns = List.of(columns);
    }

    /** Which columns hold figures, counted from 0. */
    Grid numbers(int... at) {
        numbers = IntStream.of(at).boxed().collect(Collectors.toSet());
        return this;
    }

    /** Which columns hold moments, which stay on one line. */
    Grid moments(int... at) {
        moments = IntStream.of(at).boxed().collect(Collectors.toSet());
        return this;
    }

    Grid row(String... cells) {
        rows.add(List.of(cells));
        return this;
    }

    Part part() {
        return new Part(
                "table",
                title,
                List.of(),
                cells(columns, false),
                rows.stream().map(row -> cells(row, true)).toList(),
                List.of());
    }

    private List<Cell> cells(List<String> texts, boolean named) {
        return IntStream.range(0, texts.size())
                .mapToObj(i ->
                        new Cell(texts.get(i), named && i == 0, numbers.contains(i), named && whole(texts.get(i), i)))
                .toList();
    }

    /** Moments, short figures with their units and short names stay on one line. */
    private boolean whole(String text, int column) {
        return moments.contains(column) || text.length() <= SHORT;
    }
}
