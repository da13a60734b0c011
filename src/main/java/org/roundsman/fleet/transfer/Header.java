package org.roundsman.fleet.transfer;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.roundsman.fleet.TransferTable;

/**
 * The first row of a file, which says what table it is.
 *
 * @param columns by their names, in the order of the file
 */
record Header(TransferTable table, List<String> columns) {

    private static final int NAMED_AT_MOST = 6;

    /** How well a row of names fits a table. */
    private record Fit(TransferTable table, long known, long unknown, List<String> missing) {

        static Fit of(TransferTable table, List<String> names) {
            Set<String> all = names(table);
            long known = names.stream().filter(all::contains).distinct().count();
            List<String> missing = table.columns().stream()
                    .filter(column -> column.needed() && !names.contains(column.name()))
                    .map(TransferTable.Column::name)
                    .toList();
            return new Fit(table, known, names.size() - known, missing);
        }
    }

    /** The table that the names fit best, whole ones first. */
    private static Fit best(List<String> names) {
        return Arrays.stream(TransferTable.values())
                .map(table -> Fit.of(table, names))
                .max(Comparator.<Fit>comparingLong(fit -> fit.known() - fit.unknown())
                        .thenComparing(fit -> fit.missing().isEmpty())
                        .thenComparing(Fit::table, Comparator.reverseOrder()))
                .orElseThrow();
    }

    /** How many columns of some table the first row names: the separator that gives most is the one of the file. */
    static long known(List<String> row) {
        return best(normal(row)).known();
    }

    /** Reads the first row, or says what is wrong in it. */
    static Header of(List<String> row) throws Unreadable {
        List<String> names = normal(row);
        Fit fit = best(names);
        if (fit.known() == 0) {
            throw new Unreadable("The first row names no column of ours. It must be one of these headers: "
                    + Stream.of(TransferTable.values())
                            .map(table -> table.word() + ": " + String.join(", ", ordered(table)))
                            .collect(Collectors.joining("; "))
                    + ".");
        }
        List<String> faults = new ArrayList<>();
        if (!fit.missing().isEmpty()) {
            faults.add("column " + String.join(", ", fit.missing()) + " is missing");
        }
        faults.addAll(odd(fit.table(), row, names));
        if (!faults.isEmpty()) {
            int more = faults.size() - NAMED_AT_MOST;
            String named = faults.stream().limit(NAMED_AT_MOST).collect(Collectors.joining("; "))
                    + (more > 0 ? "; and " + more + " more" : "");
            throw new Unreadable("The header looks like " + fit.table().word() + ", but " + named + ". Columns of "
                    + fit.table().word() + ": " + String.join(", ", ordered(fit.table())) + ".");
        }
        return new Header(fit.table(), names);
    }

    private static List<String> odd(TransferTable table, List<String> row, List<String> names) {
        List<String> faults = new ArrayList<>();
        Set<String> seen = new HashSet<>();
        for (int i = 0; i < names.size(); i++) {
            if (names.get(i).isEmpty()) {
                faults.add("column " + (i + 1) + " has no name");
            } else if (!names(table).contains(names.get(i))) {
                faults.add("there is no column “" + row.get(i).strip() + "”" + meant(table, names.get(i)));
            } else if (!seen.add(names.get(i))) {
                faults.add("column " + names.get(i) + " stands there twice");
            }
        }
        return faults;
    }

    /** The column that was probably meant: one that begins alike or holds the same word. */
    private static String meant(TransferTable table, String name) {
        return ordered(table).stream()
                .filter(column -> column.length() > 3 && name.length() > 3)
                .filter(column -> column.contains(name) || name.contains(column) || alike(column, name))
                .findFirst()
                .map(column -> " (is " + column + " meant?)")
                .orElse("");
    }

    private static boolean alike(String column, String name) {
        return column.substring(0, 4).equals(name.substring(0, 4));
    }

    /** Case, spaces and hyphens do not matter: {@code Time zone} is {@code time_zone}. */
    private static List<String> normal(List<String> row) {
        return row.stream()
                .map(name -> name.strip().toLowerCase(Locale.ROOT).replaceAll("[\\s-]+", "_"))
                .toList();
    }

    private static List<String> ordered(TransferTable table) {
        return table.columns().stream().map(TransferTable.Column::name).toList();
    }

    private static Set<String> names(TransferTable table) {
        return new HashSet<>(ordered(table));
    }
}
