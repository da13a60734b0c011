package org.roundsman.fleet.transfer;

import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import javax.sql.DataSource;
import org.apache.commons.csv.CSVPrinter;
import org.roundsman.fleet.TransferTable;

/** Writes tables as CSV in UTF-8, row by row as they come from the database. */
public final class Exporting {

    /** U+FEFF tells spreadsheet programs that the file is UTF-8. */
    private static final char MARK = '\uFEFF';

    private Exporting() {}

    /**
     * Writes a table of one customer or (null) of all, in one transaction, and flushes the stream.
     *
     * @param mark whether a byte order mark goes ahead
     * @throws IOException when the receiver does not take it
     */
    public static void write(DataSource source, Long only, TransferTable table, boolean mark, OutputStream out)
            throws IOException {
        Writer text = new OutputStreamWriter(out, StandardCharsets.UTF_8);
        CSVPrinter printer = printer(text, table, mark);
        try {
            new Database(source).transaction(connection -> {
                Database.run(connection, "set transaction isolation level repeatable read, read only");
                rows(connection, only, table, printer);
                return null;
            });
        } catch (SQLException e) {
            throw new IllegalStateException("The database failed: " + e.getMessage(), e);
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
        text.flush();
    }

    /** The header and one invented row. */
    public static String template(TransferTable table, boolean mark) {
        StringBuilder text = new StringBuilder();
        try {
            CSVPrinter printer = printer(text, table, mark);
            CsvText.print(
                    printer,
                    table.columns().stream().map(TransferTable.Column::example).toList());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    private static CSVPrinter printer(Appendable out, TransferTable table, boolean mark) throws IOException {
        if (mark) {
            out.append(MARK);
        }
        CSVPrinter printer = CsvText.printer(out);
        CsvText.print(
                printer,
                table.columns().stream().map(TransferTable.Column::name).toList());
        return printer;
    }

    private static void rows(Connection connection, Long only, TransferTable table, CSVPrinter printer)
            throws SQLException {
        StoredFleet stored = new StoredFleet(connection, only);
        switch (table) {
            case CUSTOMERS -> stored.customers(row -> print(printer, CustomerCells.of(row.draft())));
            case SITES -> stored.sites(row -> print(printer, SiteCells.of(row.customer(), row.draft())));
            case MODELS -> {
                KnownNames known = stored.names();
                stored.models(row -> print(printer, ModelCells.of(row.draft(), known)));
            }
            case DEVICES -> {
                KnownNames known = stored.names();
                stored.devices(row -> print(printer, DeviceCells.of(row.customer(), row.site(), row.draft(), known)));
            }
            case PURCHASES ->
                stored.purchases(
                        row -> print(printer, Bought.cells(row.customer(), row.site(), row.device(), row.draft())));
        }
    }

    private static void print(CSVPrinter printer, Map<String, String> cells) {
        Collection<String> fields = cells.values();
        try {
            CsvText.print(printer, List.copyOf(fields));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
