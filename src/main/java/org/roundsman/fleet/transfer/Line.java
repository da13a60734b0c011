package org.roundsman.fleet.transfer;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.roundsman.audit.AuditEntry.FieldChange;
import org.roundsman.fleet.ImportOutcome;
import org.roundsman.fleet.ImportRow;
import org.roundsman.fleet.TransferTable;

/** One row of an upload, and what becomes of it. Used by one thread. */
public final class Line {

    /** Stands for the row as a whole among the faults. */
    static final String WHOLE = "";

    private final int file;
    private final String fileName;
    private final int row;
    private final TransferTable table;
    private final Map<String, String> cells;
    private final Map<String, String> misread = new LinkedHashMap<>();
    private final Map<String, String> faults = new LinkedHashMap<>();
    private List<FieldChange> changes = List.of();
    private boolean fresh;

    Line(int file, String fileName, int row, TransferTable table, Map<String, String> cells) {
        this.file = file;
        this.fileName = fileName;
        this.row = row;
        this.table = table;
        this.cells = new LinkedHashMap<>();
        cells.forEach((column, text) -> this.cells.put(column, storable(column, text)));
        faults.putAll(misread);
    }

    /** What was wrong already when the file was read: it stays wrong however the fleet changes. */
    Map<String, String> misread() {
        return misread;
    }

    /** Puts back what was wrong when the file was read. */
    void misread(Map<String, String> before) {
        misread.putAll(before);
        faults.putAll(before);
    }

    /** No text of ours can hold U+0000; the row is refused, and shows a picture of it instead. */
    private String storable(String column, String text) {
        if (text.indexOf('\0') < 0) {
            return text;
        }
        misread.put(column, "holds the character NUL, which no text can have");
        return text.replace('\0', '\u2400');
    }

    /** The number of fields is wrong: nothing else of the row can be trusted. */
    void misshapen(String reason) {
        misread(Map.of(WHOLE, reason));
    }

    boolean isMisshapen() {
        return faults.containsKey(WHOLE);
    }

    /** The first fault of a column stays. */
    void fault(String column, String reason) {
        faults.putIfAbsent(column, reason);
    }

    boolean refused() {
        return !faults.isEmpty();
    }

    boolean has(String column) {
        return cells.containsKey(column);
    }

    /** As read, without spaces around it; empty where the file has no such column. */
    String at(String column) {
        return cells.getOrDefault(column, "").strip();
    }

    int file() {
        return file;
    }

    int row() {
        return row;
    }

    TransferTable table() {
        return table;
    }

    Map<String, String> cells() {
        return cells;
    }

    /** {@code row 7 of devices.csv}. */
    String place() {
        return "row " + row + " of " + fileName;
    }

    void becomes(boolean isNew, List<FieldChange> differences) {
        fresh = isNew;
        changes = differences;
    }

    ImportOutcome outcome() {
        if (refused()) {
            return ImportOutcome.REFUSED;
        }
        if (fresh) {
            return ImportOutcome.NEW;
        }
        return changes.isEmpty() ? ImportOutcome.SAME : ImportOutcome.CHANGED;
    }

    /** What it would do. */
    ImportRow result() {
        return new ImportRow(
                fileName,
                row,
                table,
                name(),
                within(table, cells),
                outcome(),
                refused() ? List.of() : changes,
                new LinkedHashMap<>(faults),
                given(cells, faults.keySet()),
                false);
    }

    /** What the file holds in those columns, for a person who looks for it there. */
    static Map<String, String> given(Map<String, String> cells, Set<String> columns) {
        Map<String, String> given = new LinkedHashMap<>();
        for (String column : columns) {
            String text = cells.getOrDefault(column, "").strip();
            if (!text.isEmpty()) {
                given.put(column, shortened(text));
            }
        }
        return given;
    }

    private static String shortened(String text) {
        return text.codePointCount(0, text.length()) <= ImportRow.LONGEST_GIVEN
                ? text
                : text.substring(0, text.offsetByCodePoints(0, ImportRow.LONGEST_GIVEN - 1)) + "…";
    }

    /** {@code Harbour clinic, Pebblegate Dental}. */
    static String within(TransferTable table, Map<String, String> cells) {
        Stream<String> columns =
                switch (table) {
                    case CUSTOMERS -> Stream.of();
                    case MODELS -> Stream.of("maker");
                    case SITES -> Stream.of("customer");
                    case DEVICES, PURCHASES -> Stream.of("site", "customer");
                };
        return columns.map(column -> cells.getOrDefault(column, "").strip())
                .filter(text -> !text.isEmpty())
                .collect(Collectors.joining(", "));
    }

    private String name() {
        String own = at(table == TransferTable.PURCHASES ? "serial" : table.one());
        return own.isEmpty() ? at("host") : own;
    }
}
