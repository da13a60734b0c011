package org.roundsman.web.topology;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.Site;
import org.roundsman.fleet.Sites;
import org.roundsman.readings.BoardQuery;
import org.roundsman.readings.DeviceRow;
import org.roundsman.readings.FleetBoard;
import org.roundsman.shared.Page;
import org.roundsman.topology.Topology;
import org.roundsman.web.fleet.DeviceLine;
import org.roundsman.web.page.State;

/** Asks for what pages show about wiring. */
@ApplicationScoped
class WiringViews {

    private static final int PAGE = 500;

    private final Sites sites;
    private final Topology topology;
    private final FleetBoard fleet;
    private final Clock clock;

    WiringViews(Sites sites, Topology topology, FleetBoard fleet, Clock clock) {
        this.sites = sites;
        this.topology = topology;
        this.fleet = fleet;
        this.clock = clock;
    }

    /** Empty when there is no such site in the scope. */
    Optional<WiringView> site(CustomerScope scope, long siteId) {
        Optional<Site> site = sites.find(scope, siteId);
        Instant now = clock.instant();
        return site.flatMap(found -> topology.wiring(scope, siteId)
                .map(wiring ->
                        WiringView.of(siteId, found.name, wiring, states(scope, siteId, now), found.zone(), now)));
    }

    private Map<Long, State> states(CustomerScope scope, long siteId, Instant now) {
        Map<Long, State> states = new HashMap<>();
        Page<DeviceRow> page;
        int number = 1;
        do {
            page = fleet.devices(scope, devicesOf(siteId, number++));
            page.items().forEach(row -> states.put(row.deviceId(), DeviceLine.state(row, now)));
        } while (states.size() < page.total() && !page.items().isEmpty());
        return states;
    }

    private static BoardQuery devicesOf(long siteId, int page) {
        return new BoardQuery(
                "",
                Optional.empty(),
                Optional.of(siteId),
                Optional.empty(),
                Set.of(),
                BoardQuery.Sort.NAME,
                false,
                page,
                PAGE);
    }
}
