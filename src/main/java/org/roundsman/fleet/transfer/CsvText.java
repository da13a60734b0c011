package org.roundsman.fleet.transfer;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVPrinter;
import org.apache.commons.csv.CSVRecord;

/** Comma-separated values after RFC 4180: records end in CRLF, inner quotes are doubled, spaces are data. */
final class CsvText {

    private static final CSVFormat FORMAT = CSVFormat.RFC4180;

    private CsvText() {}

    /** Every record, empty lines included (as one empty field), with the guard of formulas taken off. */
    static List<List<String>> records(String text, char delimiter) throws Unreadable {
        List<List<String>> records = new ArrayList<>();
        try (CSVParser parser = CSVParser.parse(
                new StringReader(text), FORMAT.builder().setDelimiter(delimiter).get())) {
            for (CSVRecord csv : parser) {
                records.add(fields(csv));
            }
        } catch (IOException | UncheckedIOException e) {
            boolean open = String.valueOf(e.getMessage()).contains("EOF");
            throw new Unreadable("Row " + (records.size() + 1) + " cannot be read: "
                    + (open
                            ? "a quotation mark opens a field and none closes it."
                            : "after the quotation mark that closes a field, a separator must follow; double a quotation"
                                    + " mark that belongs to the text."));
        }
        return records;
    }

    private static List<String> fields(CSVRecord csv) {
        List<String> fields = new ArrayList<>(csv.size());
        csv.forEach(field -> fields.add(Guard.off(field)));
        return fields;
    }

    /** A printer of records; formulas are guarded by {@link #print}. */
    static CSVPrinter printer(Appendable out) throws IOException {
        return new CSVPrinter(out, FORMAT);
    }

    static void print(CSVPrinter printer, List<String> fields) throws IOException {
        printer.printRecord(fields.stream().map(Guard::on).toList());
    }
}
