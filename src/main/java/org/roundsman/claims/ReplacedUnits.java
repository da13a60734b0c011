package org.roundsman.claims;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.OptionalLong;
import javax.sql.DataSource;
import org.roundsman.claims.store.StayTable;

/**
 * Looks back on the units of one customer that took another's place. For the service itself: callers check the customer
 * scope. Thread-safe.
 */
@ApplicationScoped
public class ReplacedUnits {

    private final StayTable stays;

    @Inject
    public ReplacedUnits(DataSource database) {
        this.stays = new StayTable(database);
    }

    /**
     * A unit that took another's place.
     *
     * @param siteId empty when the site is gone
     * @param device name of the place
     */
    public record Replaced(
            OptionalLong siteId,
            String site,
            ZoneId zone,
            long deviceId,
            String device,
            String oldSerial,
            String newSerial,
            Instant at) {}

    /**
     * Those that came between these moments, by time. What was only announced counts, unless the device says otherwise. One
     * statement.
     */
    public List<Replaced> of(long customerId, Instant from, Instant to) {
        return stays.replaced(customerId, from, to);
    }
}
