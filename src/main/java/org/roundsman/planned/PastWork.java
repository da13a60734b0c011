package org.roundsman.planned;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.util.List;
import javax.sql.DataSource;
import org.roundsman.planned.store.WindowTable;

/** Looks back on the planned work of one customer. For the service itself: callers check the customer scope. Thread-safe. */
@ApplicationScoped
public class PastWork {

    private final WindowTable table;

    @Inject
    public PastWork(DataSource database) {
        this.table = new WindowTable(database);
    }

    /**
     * Windows of the customer, its sites and its devices that may reach beyond that moment, in the order in which they were
     * made; ask each for its {@link PlannedWindow#stretches}. One statement.
     */
    public List<PlannedWindow> of(long customerId, Instant from) {
        return table.open(customerId, null, from);
    }
}
