package org.roundsman.planned;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Function;

/**
 * All planned work of the fleet as it was stored at one moment, for those who ask about many devices again and again.
 * Immutable. Answers hold for moments from {@link #takenAt} on, until something is changed.
 */
public final class PlannedNow {

    /** Where a site is. */
    record Spot(long customerId, ZoneId zone) {}

    private final Instant takenAt;
    private final Map<Long, Spot> sites;
    private final Map<Long, List<PlannedWindow>> ofCustomer;
    private final Map<Long, List<PlannedWindow>> ofSite;
    private final Map<Long, List<PlannedWindow>> ofDevice;

    /**
     * @param sites by id
     * @param windows those that may still have time to come
     */
    PlannedNow(Instant takenAt, Map<Long, Spot> sites, Collection<PlannedWindow> windows) {
        this.takenAt = takenAt;
        this.sites = Map.copyOf(sites);
        ofCustomer = by(windows, Reach.CUSTOMER, target -> OptionalLong.of(target.customerId()));
        ofSite = by(windows, Reach.SITE, Target::siteId);
        ofDevice = by(windows, Reach.DEVICE, Target::deviceId);
    }

    private static Map<Long, List<PlannedWindow>> by(
            Collection<PlannedWindow> windows, Reach reach, Function<Target, OptionalLong> id) {
        Map<Long, List<PlannedWindow>> found = new HashMap<>();
        windows.stream().filter(window -> window.target().reach() == reach).forEach(window -> id.apply(window.target())
                .ifPresent(key ->
                        found.computeIfAbsent(key, k -> new ArrayList<>()).add(window)));
        return found;
    }

    /** When the database was asked. */
    public Instant takenAt() {
        return takenAt;
    }

    /** Whether that device, or with no device the site as a whole, is worked on at that moment. */
    public boolean covers(long siteId, OptionalLong deviceId, Instant at) {
        return current(siteId, deviceId, at).isPresent();
    }

    /** The work that goes on there at that moment; of several, the one that lasts longest. */
    public Optional<Running> current(long siteId, OptionalLong deviceId, Instant at) {
        Spot spot = sites.get(siteId);
        if (spot == null) {
            return Optional.empty();
        }
        return windows(siteId, spot, deviceId).stream()
                .flatMap(window -> window.running(spot.zone(), at).map(one -> Running.of(window, one)).stream())
                .max(Comparator.comparing(Running::to));
    }

    /** Those of these sites that are worked on as a whole at that moment, with the work that lasts longest. */
    public Map<Long, Running> sitesCovered(Collection<Long> siteIds, Instant at) {
        Map<Long, Running> covered = new HashMap<>();
        siteIds.forEach(id -> current(id, OptionalLong.empty(), at).ifPresent(running -> covered.put(id, running)));
        return covered;
    }

    /**
     * The work on that site as a whole that goes on at the first moment or begins before the second, the earliest first. A
     * window that repeats comes once for each time.
     */
    public List<Running> coming(long siteId, Instant from, Instant to) {
        Spot spot = sites.get(siteId);
        if (spot == null) {
            return List.of();
        }
        return windows(siteId, spot, OptionalLong.empty()).stream()
                .flatMap(window ->
                        window.stretches(spot.zone(), from, to).stream().map(one -> Running.of(window, one)))
                .sorted(Comparator.comparing(Running::from).thenComparing(Running::windowId))
                .toList();
    }

    private List<PlannedWindow> windows(long siteId, Spot spot, OptionalLong deviceId) {
        List<PlannedWindow> all = new ArrayList<>(ofCustomer.getOrDefault(spot.customerId(), List.of()));
        all.addAll(ofSite.getOrDefault(siteId, List.of()));
        deviceId.ifPresent(id -> all.addAll(ofDevice.getOrDefault(id, List.of())));
        return all;
    }
}
