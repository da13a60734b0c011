package org.roundsman.web.site;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.readings.BoardQuery;
import org.roundsman.readings.DeviceRow;
import org.roundsman.readings.FleetBoard;
import org.roundsman.readings.SiteRow;
import org.roundsman.shared.Page;
import org.roundsman.web.fleet.Flags;
import org.roundsman.web.page.Trouble;

/** Asks for what a site's page shows. */
@ApplicationScoped
class SiteViews {

    /** More devices than that are to be looked at through the fleet view's search and paging. */
    private static final int MOST = 100;

    private final FleetBoard fleet;
    private final Flags flags;
    private final Trouble trouble;
    private final Clock clock;

    SiteViews(FleetBoard fleet, Flags flags, Trouble trouble, Clock clock) {
        this.fleet = fleet;
        this.flags = flags;
        this.trouble = trouble;
        this.clock = clock;
    }

    Optional<SiteView> view(CustomerScope scope, long siteId) {
        return fleet.site(scope, siteId).map(row -> view(scope, row));
    }

    private SiteView view(CustomerScope scope, SiteRow row) {
        Instant now = clock.instant();
        Page<DeviceRow> devices = fleet.devices(scope, devicesOf(row.siteId()));
        List<Long> ids = devices.items().stream().map(DeviceRow::deviceId).toList();
        return SiteView.of(
                row, devices, flags.ofDevices(scope, ids), trouble.behind().orElse(""), now);
    }

    private static BoardQuery devicesOf(long siteId) {
        return new BoardQuery(
                "",
                Optional.empty(),
                Optional.of(siteId),
                Optional.empty(),
                Set.of(),
                BoardQuery.Sort.TROUBLE,
                false,
                1,
                MOST);
    }
}
