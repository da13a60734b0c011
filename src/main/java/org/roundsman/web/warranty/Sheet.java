package org.roundsman.web.warranty;

import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import java.io.BufferedWriter;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/** A list as CSV (RFC 4180) for spreadsheets. Begins with a byte order mark, by which they know UTF-8. */
final class Sheet {

    private Sheet() {}

    /**
     * The download of a list.
     *
     * @param name of the file, without its ending
     * @param rows one text per head
     */
    static Response of(String name, List<String> heads, List<List<String>> rows) {
        StreamingOutput content = out -> {
            Writer writer = new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8));
            writer.write('\uFEFF');
            CSVPrinter printer = new CSVPrinter(writer, CSVFormat.RFC4180);
            printer.printRecord(heads);
            for (List<String> row : rows) {
                printer.printRecord(row.stream().map(Sheet::guarded).toList());
            }
            writer.flush();
        };
        return Response.ok(content)
                .type("text/csv; charset=utf-8")
                .header(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"" + name + ".csv\"")
                .build();
    }

    /** Keeps a spreadsheet from taking text for a formula: OWASP ASVS 5.0, 1.2.10. */
    static String guarded(String text) {
        return !text.isEmpty() && "=+-@\t\0".indexOf(text.charAt(0)) >= 0 ? "'" + text : text;
    }
}
