package org.roundsman.alarms;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import javax.sql.DataSource;
import org.roundsman.alarms.store.PastRows;
import org.roundsman.alarms.store.Sql;

/** Looks back on the alarms of one customer, or of the service itself. For the service itself: callers check the customer scope. Thread-safe. */
@ApplicationScoped
public class PastAlarms {

    private final DataSource database;

    /** A time that an alarm was active, from the begin of its fault; without an end while it is. */
    public record Time(Instant began, Optional<Instant> cleared) {}

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

    /** When an alarm of that type about the service itself was active and not over at {@code from}, by its begin. */
    public List<Time> ofService(AlarmType type, Instant from) {
        return Sql.ask(database, connection -> PastRows.ofService(connection, type, from));
    }
}
