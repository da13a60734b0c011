package org.roundsman.planned;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.enterprise.event.TransactionPhase;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import javax.sql.DataSource;
import org.roundsman.fleet.FleetChanged;
import org.roundsman.planned.store.WindowTable;
import org.roundsman.planned.store.WindowTable.SiteZone;

/**
 * Tells when a site or a device is worked on. A device is worked on when it is, when its site is, or when all sites of its
 * customer are. Callers check the customer scope through the fleet first; of a site that is not there nothing is planned.
 * Thread-safe.
 */
@ApplicationScoped
public class PlannedWork {

    /** Another process may have changed something; this one drops the picture by itself when it does. */
    private static final Duration FRESH = Duration.ofSeconds(5);

    private final WindowTable table;
    private final Clock clock;
    private volatile PlannedNow picture;

    @Inject
    public PlannedWork(DataSource database, Clock clock) {
        this.table = new WindowTable(database);
        this.clock = clock;
    }

    /** Whether it is worked on at that moment, past or to come. */
    public boolean covers(long siteId, OptionalLong deviceId, Instant at) {
        return current(siteId, deviceId, at).isPresent();
    }

    /** The work that goes on there at that moment; of several, the one that lasts longest. */
    public Optional<Running> current(long siteId, OptionalLong deviceId, Instant at) {
        return running(siteId, deviceId, at).stream().findFirst();
    }

    /** All work that goes on there at that moment, the one that lasts longest first. */
    public List<Running> running(long siteId, OptionalLong deviceId, Instant at) {
        Optional<SiteZone> site = table.site(siteId);
        return site.stream()
                .flatMap(found -> table.reaching(found, deviceId, at).stream())
                .flatMap(window -> window.running(site.get().zone(), at).map(one -> Running.of(window, one)).stream())
                .sorted(Comparator.comparing(Running::to).reversed())
                .toList();
    }

    /**
     * When it was, is and will be worked on between these moments.
     *
     * @param deviceId empty for the site as a whole: windows of its devices do not count then
     * @return ascending, cut to the time asked for, neither overlapping nor touching
     */
    public List<Stretch> stretches(long siteId, OptionalLong deviceId, Instant from, Instant to) {
        Optional<SiteZone> site = table.site(siteId);
        return Stretch.merged(site.stream()
                .flatMap(found -> table.reaching(found, deviceId, from).stream())
                .flatMap(window -> window.stretches(site.get().zone(), from, to).stream())
                .flatMap(one -> one.within(from, to).stream())
                .toList());
    }

    /** The same of a device, wherever it stands now; none when it is not there. */
    public List<Stretch> ofDevice(long deviceId, Instant from, Instant to) {
        OptionalLong site = table.siteOf(deviceId);
        return site.isEmpty() ? List.of() : stretches(site.getAsLong(), OptionalLong.of(deviceId), from, to);
    }

    /**
     * The same of a site and all its devices at once.
     *
     * @return under 0 what reaches the site as a whole, and so each of its devices; under a device's id what reaches it alone
     */
    public Map<Long, List<Stretch>> ofSite(long siteId, Instant from, Instant to) {
        Map<Long, List<Stretch>> found = new HashMap<>();
        table.site(siteId).ifPresent(site -> table.open(null, siteId, from).stream()
                .filter(window -> window.target().reach() != Reach.DEVICE
                        || window.target().deviceId().isPresent())
                .forEach(window -> found.computeIfAbsent(
                                window.target().deviceId().orElse(0), made -> new java.util.ArrayList<>())
                        .addAll(window.stretches(site.zone(), from, to).stream()
                                .flatMap(one -> one.within(from, to).stream())
                                .toList())));
        found.replaceAll((device, stretches) -> Stretch.merged(stretches));
        return found;
    }

    /** The next work on the site as a whole that begins after that moment; empty where none is planned. */
    public Optional<Running> next(long siteId, Instant at) {
        Optional<SiteZone> site = table.site(siteId);
        return site.stream()
                .flatMap(found -> table.reaching(found, OptionalLong.empty(), at).stream())
                .flatMap(window -> window.next(site.get().zone(), at).map(one -> Running.of(window, one)).stream())
                .min(Comparator.comparing(Running::from));
    }

    /** All planned work at once, at most some seconds old, for who asks about many devices again and again. */
    public PlannedNow now() {
        PlannedNow last = picture;
        Instant now = clock.instant();
        if (last != null
                && last.takenAt().plus(FRESH).isAfter(now)
                && !last.takenAt().isAfter(now)) {
            return last;
        }
        Map<Long, PlannedNow.Spot> sites = new HashMap<>();
        table.sites().forEach((id, site) -> sites.put(id, new PlannedNow.Spot(site.customerId(), site.zone())));
        PlannedNow fresh = new PlannedNow(now, sites, table.reaching(now));
        picture = fresh;
        return fresh;
    }

    void changed(@Observes(during = TransactionPhase.AFTER_SUCCESS) PlannedWorkChanged event) {
        picture = null;
    }

    void moved(@Observes(during = TransactionPhase.AFTER_SUCCESS) FleetChanged event) {
        picture = null;
    }
}
