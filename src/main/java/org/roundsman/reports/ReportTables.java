package org.roundsman.reports;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/**
 * The figures of a report as tables, for a spreadsheet or a program. Times are moments in UTC, lengths of time seconds, shares
 * percent; causes, reasons and states have the names that stored reports have.
 */
public final class ReportTables {

    private ReportTables() {}

    /** Every table, in the order in which the report tells of it; one without rows still has its columns. */
    public static List<ReportTable> of(Report report) {
        return Stream.concat(ObservedTables.of(report).stream(), StandingTables.of(report).stream())
                .toList();
    }

    /** Empty when there is no table of that key. */
    public static Optional<ReportTable> find(Report report, String key) {
        return of(report).stream().filter(table -> table.key().equals(key)).findFirst();
    }

    /**
     * As CSV (RFC 4180). Begins with a byte order mark, by which spreadsheets know UTF-8; a text that they would take for a
     * formula has an apostrophe before it (OWASP ASVS 5.0, 1.2.10). Numbers have a point and no sign: none is ever negative.
     */
    public static String csv(ReportTable table) {
        StringBuilder out = new StringBuilder("\uFEFF");
        try (CSVPrinter printer = new CSVPrinter(out, CSVFormat.RFC4180)) {
            printer.printRecord(table.columns());
            for (List<Object> row : table.rows()) {
                printer.printRecord(row.stream().map(ReportTables::text).toList());
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toString();
    }

    private static String text(Object value) {
        if (value == null) {
            return "";
        }
        if (value instanceof Double number) {
            BigDecimal exact = BigDecimal.valueOf(number);
            return exact.signum() == 0 ? "0" : exact.stripTrailingZeros().toPlainString();
        }
        if (value instanceof BigDecimal number) {
            return number.toPlainString();
        }
        return value instanceof String text ? guarded(text) : value.toString();
    }

    /** An apostrophe goes before what begins like a formula, after any apostrophes that are there already. */
    private static String guarded(String text) {
        int i = 0;
        while (i < text.length() && text.charAt(i) == '\'') {
            i++;
        }
        return i < text.length() && "=+-@\t\0".indexOf(text.charAt(i)) >= 0 ? "'" + text : text;
    }
}
