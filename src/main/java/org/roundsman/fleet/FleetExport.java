package org.roundsman.fleet;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.io.IOException;
import java.io.OutputStream;
import java.util.Map;
import java.util.Optional;
import javax.sql.DataSource;
import org.roundsman.fleet.transfer.Exporting;

/**
 * Writes customers, sites, models, devices and purchases as the CSV that {@link FleetImport} reads: imported again, it changes
 * nothing. Fields that a spreadsheet program would run as a formula have an apostrophe before them. Secrets are never in
 * it. Thread-safe.
 */
@ApplicationScoped
public class FleetExport {

    private final DataSource source;

    @Inject
    FleetExport(DataSource source) {
        this.source = source;
    }

    /**
     * Writes a table in UTF-8, streamed from the database, and flushes the stream without closing it.
     *
     * @param customerId of that customer alone, or empty for all in the scope
     * @param mark whether a byte order mark goes ahead, by which spreadsheet programs see that it is UTF-8
     * @throws InputRejected when the customer lies outside the scope
     * @throws IOException when the receiver does not take it
     */
    public void write(
            CustomerScope scope, Optional<Long> customerId, TransferTable table, boolean mark, OutputStream out)
            throws IOException {
        if (customerId.isPresent() && !scope.includes(customerId.get())) {
            throw new InputRejected(Map.of("id", "there is no such customer"));
        }
        Exporting.write(source, customerId.orElse(scope.onlyCustomer()), table, mark, out);
    }

    /** A file to begin with: the header and one row that is marked as invented. */
    public String template(TransferTable table, boolean mark) {
        return Exporting.template(table, mark);
    }
}
