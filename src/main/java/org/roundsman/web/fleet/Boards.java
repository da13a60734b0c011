package org.roundsman.web.fleet;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Map;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.readings.BoardQuery;
import org.roundsman.readings.DeviceRow;
import org.roundsman.readings.FleetBoard;
import org.roundsman.readings.SiteRow;
import org.roundsman.shared.Page;
import org.roundsman.web.page.Trouble;

/** Asks for what the fleet view shows. */
@ApplicationScoped
class Boards {

    private static final DateTimeFormatter AS_OF = DateTimeFormatter.ofPattern("HH:mm:ss 'UTC'");

    private final FleetBoard fleet;
    private final Flags flags;
    private final Trouble trouble;
    private final Clock clock;

    Boards(FleetBoard fleet, Flags flags, Trouble trouble, Clock clock) {
        this.fleet = fleet;
        this.flags = flags;
        this.trouble = trouble;
        this.clock = clock;
    }

    /** Beyond the end the last page comes. */
    Board board(CustomerScope scope, BoardAddress address) {
        return address.tab() == Tab.SITES ? sites(scope, address) : devices(scope, address);
    }

    private Board sites(CustomerScope scope, BoardAddress address) {
        Instant now = clock.instant();
        Page<SiteRow> page = fleet.sites(scope, query(scope, address));
        if (page.number() > page.last()) {
            return sites(scope, address.onPage(page.last()));
        }
        Map<Long, FlagPair> shown =
                flags.ofSites(scope, page.items().stream().map(SiteRow::siteId).toList());
        List<SiteLine> lines = page.items().stream()
                .map(row -> SiteLine.of(row, shown.getOrDefault(row.siteId(), FlagPair.NONE), now))
                .toList();
        return board(scope, address, page, lines, List.of(), now);
    }

    private Board devices(CustomerScope scope, BoardAddress address) {
        Instant now = clock.instant();
        Page<DeviceRow> page = fleet.devices(scope, query(scope, address));
        if (page.number() > page.last()) {
            return devices(scope, address.onPage(page.last()));
        }
        Map<Long, FlagPair> shown = flags.ofDevices(
                scope, page.items().stream().map(DeviceRow::deviceId).toList());
        List<DeviceLine> lines = page.items().stream()
                .map(row -> DeviceLine.of(row, shown.getOrDefault(row.deviceId(), FlagPair.NONE), now))
                .toList();
        return board(scope, address, page, List.of(), lines, now);
    }

    private BoardQuery query(CustomerScope scope, BoardAddress address) {
        return flags.only(scope, address.flags()).map(address.query()::only).orElse(address.query());
    }

    private Board board(
            CustomerScope scope,
            BoardAddress address,
            Page<?> page,
            List<SiteLine> sites,
            List<DeviceLine> devices,
            Instant now) {
        return new Board(
                address,
                Totals.of(fleet.totals(scope)),
                trouble.behind().orElse(""),
                sites,
                devices,
                Board.range(page, address.tab()),
                Board.Pager.of(page, address),
                AS_OF.format(now.atOffset(ZoneOffset.UTC)));
    }
}
