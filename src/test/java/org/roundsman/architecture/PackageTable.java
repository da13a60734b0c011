package org.roundsman.architecture;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Which package may import which, as docs/architecture.md says. */
record PackageTable(Map<String, Set<String>> mayImport) {

    /** A row such as {@code | `fleet` | customers | shared, system |}. */
    private static final Pattern ROW = Pattern.compile("^\\| `(\\w+)` \\|.*\\|([^|]*)\\|\\s*$");

    static PackageTable in(Path document) throws IOException {
        Map<String, Set<String>> mayImport = new TreeMap<>();
        for (String line : Files.readAllLines(document)) {
            Matcher row = ROW.matcher(line);
            if (row.matches()) {
                mayImport.put(row.group(1), names(row.group(2)));
            }
        }
        return new PackageTable(mayImport);
    }

    private static Set<String> names(String cell) {
        return Arrays.stream(cell.split(","))
                .map(String::strip)
                .filter(name -> !name.isEmpty())
                .collect(Collectors.toCollection(TreeSet::new));
    }
}
