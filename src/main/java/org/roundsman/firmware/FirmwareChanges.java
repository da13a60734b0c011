package org.roundsman.firmware;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.util.List;
import java.util.OptionalLong;
import javax.sql.DataSource;
import org.roundsman.firmware.store.ChangeTable;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.shared.Page;

/** Reads which devices were seen to change their firmware, and how they did afterwards. Thread-safe. */
@ApplicationScoped
public class FirmwareChanges {

    private final ChangeTable table;

    @Inject
    public FirmwareChanges(DataSource database) {
        this.table = new ChangeTable(database);
    }

    /**
     * One page of changes, the latest first.
     *
     * @param device only of that one; empty for all in the scope
     * @param number from 1; beyond the end the last page comes
     */
    public Page<FirmwareChange> page(CustomerScope scope, OptionalLong device, int number, int size) {
        long total = table.count(scope.onlyCustomer(), device);
        int last = (int) Math.max(1, (total + size - 1) / size);
        int shown = Math.max(1, Math.min(number, last));
        return new Page<>(
                table.page(scope.onlyCustomer(), device, size, (long) (shown - 1) * size), shown, size, total);
    }

    /**
     * Those of one customer between these moments, by time, without figures, and without those where another unit took the
     * place. For the service itself. One statement.
     */
    public List<FirmwareChange> between(long customerId, Instant from, Instant to) {
        return table.between(customerId, from, to);
    }
}
