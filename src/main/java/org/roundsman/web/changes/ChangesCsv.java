package org.roundsman.web.changes;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.roundsman.audit.AuditEntry;
import org.roundsman.audit.AuditEntry.FieldChange;

/**
 * Changes as CSV (RFC 4180): one row per field that changed, or one where none did. Begins with a byte order mark, by
 * which spreadsheets know UTF-8.
 */
final class ChangesCsv {

    private static final List<FieldChange> NONE = List.of(new FieldChange("", "", ""));
    private static final String[] HEADER = {
        "time_utc",
        "entry",
        "who",
        "by_way_of",
        "token",
        "address",
        "action",
        "kind",
        "id",
        "name",
        "customer",
        "field",
        "old",
        "new"
    };

    private final Writer out;
    private final CSVPrinter printer;
    private final Map<Long, String> customers;

    /**
     * Writes the heads of the columns.
     *
     * @param customers names by id
     */
    ChangesCsv(Writer out, Map<Long, String> customers) throws IOException {
        this.out = out;
        this.customers = customers;
        out.write('\uFEFF');
        printer = new CSVPrinter(out, CSVFormat.RFC4180);
        printer.printRecord((Object[]) HEADER);
    }

    void add(AuditEntry entry) {
        for (FieldChange change : entry.changes().isEmpty() ? NONE : entry.changes()) {
            try {
                printer.printRecord((Object[]) row(entry, change));
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }

    void end() throws IOException {
        out.flush();
    }

    private String[] row(AuditEntry entry, FieldChange change) {
        AuditEntry.Subject subject = entry.subject();
        return new String[] {
            entry.at().toString(),
            String.valueOf(entry.id()),
            guarded(entry.actor().name()),
            entry.actor().via().word(),
            guarded(entry.actor().token()),
            guarded(entry.actor().address()),
            guarded(entry.action()),
            guarded(subject.kind()),
            Objects.toString(subject.id(), ""),
            guarded(subject.name()),
            guarded(subject.customerId() == null ? "" : customers.getOrDefault(subject.customerId(), "")),
            guarded(change.field()),
            guarded(change.old()),
            guarded(change.fresh())
        };
    }

    /** Keeps a spreadsheet from taking text for a formula: OWASP ASVS 5.0, 1.2.10. */
    static String guarded(String text) {
        return !text.isEmpty() && "=+-@\t\0".indexOf(text.charAt(0)) >= 0 ? "'" + text : text;
    }
}
