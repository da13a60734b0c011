package org.roundsman.web.firmware;

import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/** Tables as CSV (RFC 4180), with a byte order mark, by which spreadsheets know UTF-8. */
final class FirmwareCsv {

    private FirmwareCsv() {}

    static String text(List<String> head, List<List<String>> rows) {
        StringWriter out = new StringWriter();
        out.write('\uFEFF');
        try (CSVPrinter printer = new CSVPrinter(out, CSVFormat.RFC4180)) {
            printer.printRecord(head);
            for (List<String> row : rows) {
                printer.printRecord(row.stream().map(FirmwareCsv::guarded).toList());
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e); // a text in memory does not fail
        }
        return out.toString();
    }

    /** Keeps a spreadsheet from taking text for a formula: OWASP ASVS 5.0, 1.2.10. */
    static String guarded(String text) {
        return !text.isEmpty() && "=+-@\t\0".indexOf(text.charAt(0)) >= 0 ? "'" + text : text;
    }
}
