package org.roundsman.fleet.transfer;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.roundsman.fleet.ImportFile;
import org.roundsman.fleet.ImportRun.Source;
import org.roundsman.fleet.ImportUnreadable;
import org.roundsman.fleet.ImportUnreadable.Fault;

/**
 * The files of one upload, read as tables.
 *
 * @param sources one for each file, in the order of their tables
 * @param lines rows of all files in the order in which they are applied
 */
public record Upload(List<Source> sources, List<Line> lines) {

    /** Rows of one upload at most, which bounds the memory that an import takes. */
    public static final int MOST_ROWS = 100_000;

    private static final Map<Character, String> DELIMITERS = delimiters();

    private static Map<Character, String> delimiters() {
        Map<Character, String> all = new LinkedHashMap<>();
        all.put(',', "comma");
        all.put(';', "semicolon");
        all.put('\t', "tab");
        return all;
    }

    private record Table(ImportFile file, Source source, Header header, List<List<String>> records) {}

    /**
     * Reads files.
     *
     * @param elseWindows whether files that are not UTF-8 are Windows-1252, which somebody must have said
     * @throws ImportUnreadable naming every file that cannot be read
     */
    public static Upload read(List<ImportFile> files, boolean elseWindows) {
        List<Fault> faults = new ArrayList<>();
        List<Table> tables = new ArrayList<>();
        for (ImportFile file : files) {
            try {
                tables.add(table(file, elseWindows));
            } catch (Unreadable e) {
                faults.add(new Fault(file.shownName(), e.getMessage()));
            }
        }
        if (files.isEmpty()) {
            faults.add(new Fault("", "No file was chosen."));
        }
        tables.sort(Comparator.comparing(table -> table.source().table()));
        List<Line> lines = new ArrayList<>();
        for (int i = 0; i < tables.size(); i++) {
            lines.addAll(lines(tables.get(i), i));
        }
        if (lines.size() > MOST_ROWS) {
            faults.add(new Fault(
                    "",
                    "An upload takes " + MOST_ROWS + " rows at most; this one has " + lines.size()
                            + ". Send it in parts: customers first, purchases last."));
        }
        if (faults.isEmpty() && lines.isEmpty()) {
            faults.add(new Fault("", "There is no row below the header."));
        }
        if (!faults.isEmpty()) {
            throw new ImportUnreadable(faults);
        }
        return new Upload(tables.stream().map(Table::source).toList(), lines);
    }

    private static Table table(ImportFile file, boolean elseWindows) throws Unreadable {
        Encodings.Decoded decoded = Encodings.decode(file.content(), elseWindows);
        String text = decoded.text();
        if (text.isBlank()) {
            throw new Unreadable("The file is empty.");
        }
        char delimiter = delimiter(text);
        List<List<String>> records = CsvText.records(text, delimiter);
        int first = 0;
        while (first < records.size() && blank(records.get(first))) {
            first++;
        }
        if (first == records.size()) {
            throw new Unreadable("The file is empty.");
        }
        if (first > 0) {
            throw new Unreadable(
                    "The header must be the first row; row " + (first + 1) + " is the first that holds anything.");
        }
        Header header = Header.of(records.get(0));
        int rows = (int) records.stream().skip(1).filter(row -> !blank(row)).count();
        Source source =
                new Source(file.shownName(), header.table(), decoded.encoding(), DELIMITERS.get(delimiter), rows);
        return new Table(file, source, header, records);
    }

    /** The separator that makes most known columns of the first row; a comma when none does. */
    private static char delimiter(String text) {
        int end = firstRowEnd(text);
        char best = ',';
        long most = 0;
        for (char candidate : DELIMITERS.keySet()) {
            long known = known(text.substring(0, end), candidate);
            if (known > most) {
                most = known;
                best = candidate;
            }
        }
        return best;
    }

    private static long known(String row, char delimiter) {
        try {
            List<List<String>> records = CsvText.records(row, delimiter);
            return records.isEmpty() ? 0 : Header.known(records.get(0));
        } catch (Unreadable e) {
            return 0; // with another separator the row may well be readable
        }
    }

    private static int firstRowEnd(String text) {
        boolean quoted = false;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            quoted ^= c == '"';
            if (!quoted && (c == '\n' || c == '\r')) {
                return i;
            }
        }
        return text.length();
    }

    private static List<Line> lines(Table table, int number) {
        List<Line> lines = new ArrayList<>();
        for (int i = 1; i < table.records().size(); i++) {
            List<String> fields = table.records().get(i);
            if (!blank(fields)) {
                lines.add(line(table, number, i + 1, fields));
            }
        }
        return lines;
    }

    private static Line line(Table table, int number, int row, List<String> fields) {
        List<String> columns = table.header().columns();
        Map<String, String> cells = new LinkedHashMap<>();
        for (int i = 0; i < Math.min(columns.size(), fields.size()); i++) {
            cells.put(columns.get(i), fields.get(i));
        }
        Line line = new Line(number, table.source().name(), row, table.source().table(), cells);
        if (fields.size() != columns.size()) {
            line.misshapen("it has " + fields.size() + (fields.size() == 1 ? " field" : " fields") + ", the header has "
                    + columns.size() + "; put a text that holds a separator between quotation marks");
        }
        return line;
    }

    private static boolean blank(List<String> fields) {
        return fields.stream().allMatch(String::isBlank);
    }
}
