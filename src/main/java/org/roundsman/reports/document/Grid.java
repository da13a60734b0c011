package org.roundsman.reports.document;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Builds a table for people; the first cell of a row names it, unless it would be that of the only site. */
final class Grid {

    private static final int SHORT = 16;
    private static final int NONE = -1;

    private final String title;
    private final List<String> columns;
    private final List<List<String>> rows = new ArrayList<>();
    private Set<Integer> numbers = Set.of();
    private Set<Integer> moments = Set.of();
    private int site = NONE;
    private String onlySite = "";

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

    /**
     * Which column names the site: it is left out where there is only one and no row names another.
     *
     * @param only the one that there is; empty where there are several
     */
    Grid site(int at, Optional<String> only) {
        site = only.isPresent() ? at : NONE;
        onlySite = only.orElse("");
        return this;
    }

    Grid row(String... cells) {
        rows.add(List.of(cells));
        return this;
    }

    Part part() {
        return part("table");
    }

    /** The same in little space: for many rows of little weight. */
    Part compact() {
        return part("compact");
    }

    private Part part(String kind) {
        int left = site != NONE && rows.stream().allMatch(row -> row.get(site).equals(onlySite)) ? site : NONE;
        return new Part(
                kind,
                title,
                List.of(),
                cells(columns, false, left),
                rows.stream().map(row -> cells(row, true, left)).toList(),
                List.of());
    }

    /** @param left the column that is left out */
    private List<Cell> cells(List<String> texts, boolean named, int left) {
        return IntStream.range(0, texts.size())
                .filter(i -> i != left)
                .mapToObj(i ->
                        new Cell(texts.get(i), named && i == 0, numbers.contains(i), named && whole(texts.get(i), i)))
                .toList();
    }

    /** Moments, short figures with their units and short names stay on one line. */
    private boolean whole(String text, int column) {
        return moments.contains(column) || text.length() <= SHORT;
    }
}
