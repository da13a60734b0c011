package org.roundsman.alarms;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.util.List;
import javax.sql.DataSource;
import org.roundsman.alarms.store.PastRows;
import org.roundsman.alarms.store.Sql;

/** Looks back on the alarms of one customer. For the service itself: callers check the customer scope. Thread-safe. */
@ApplicationScoped
public class PastAlarms {

    private final DataSource database;

    @Inject
    public PastAlarms(DataSource database) {
        this.database = database;
    }

    /**
     * Episodes whose fault began before {@code to} and that were not over at {@code from}, explained ones and those in planned
     * work included; by their begin. One statement.
     */
    public List<PastEpisode> of(long customerId, Instant from, Instant to) {
        return Sql.ask(database, connection -> PastRows.of(connection, customerId, from, to));
    }
}
