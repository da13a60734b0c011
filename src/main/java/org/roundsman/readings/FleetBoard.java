package org.roundsman.readings;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Optional;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.shared.Page;

/** The fleet as it is now. Filter, order and paging are done by the database. */
@ApplicationScoped
public class FleetBoard {

    public FleetTotals totals(CustomerScope scope) {
        throw new UnsupportedOperationException();
    }

    public Page<SiteRow> sites(CustomerScope scope, BoardQuery query) {
        throw new UnsupportedOperationException();
    }

    public Page<DeviceRow> devices(CustomerScope scope, BoardQuery query) {
        throw new UnsupportedOperationException();
    }

    /** One device, empty when it does not exist or lies outside the scope. */
    public Optional<DeviceRow> device(CustomerScope scope, long deviceId) {
        throw new UnsupportedOperationException();
    }

    /** One site, empty when it does not exist or lies outside the scope. */
    public Optional<SiteRow> site(CustomerScope scope, long siteId) {
        throw new UnsupportedOperationException();
    }
}
