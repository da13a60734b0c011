package org.roundsman.triage.watch;

import java.time.Duration;
import java.time.Instant;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.roundsman.triage.DeviceLook;

/**
 * Whether it is we who see nothing. Since the last answer of any device nothing came back, and among those that were asked
 * since are devices of three sites, or of all when there are two, and at least half of all that answered until then. Of one
 * site alone it cannot be told. Besides: nothing was asked at all, though this process should. Pure.
 */
final class Blindness {

    private static final int SITES = 3;
    private static final int LEAST_SITES = 2;
    private static final int LEAST_DEVICES = 3;
    /** With 2 % of all rounds lost, so many in a row are lost once in 15 billion rounds. */
    private static final int LEAST_MISSES = 6;

    private static final double OVERDUE = 2.5;
    private static final Duration LEAST_STALL = Duration.ofSeconds(60);

    private Blindness() {}

    /**
     * We see nothing.
     *
     * @param since when it began
     * @param stalled we do not even ask
     * @param devices that were lost so far
     * @param sites of theirs
     * @param allSites that had devices that answered until then
     */
    record Blind(Instant since, boolean stalled, Set<Long> devices, int sites, int allSites) {}

    /**
     * Looks at the whole fleet.
     *
     * @param siteOf of each device
     */
    static Optional<Blind> of(Collection<DeviceLook> looks, Map<Long, Long> siteOf) {
        Optional<Instant> heard =
                looks.stream().flatMap(look -> look.heard().stream()).max(Instant::compareTo);
        if (heard.isEmpty()) {
            return Optional.empty();
        }
        Instant last = heard.get();
        // Those that were lost while others answered tell nothing, nor do those that nobody watches.
        List<DeviceLook> until = looks.stream()
                .filter(DeviceLook::watched)
                .filter(look -> look.heardAfter(
                        last.minusMillis((long) (OVERDUE * look.interval().toMillis()))))
                .filter(look -> !look.lost() || look.lostSince().orElseThrow().isAfter(last))
                .toList();
        List<DeviceLook> lost = until.stream().filter(DeviceLook::lost).toList();
        int sites = sites(lost, siteOf).size();
        int all = sites(until, siteOf).size();
        boolean wide = sites >= LEAST_SITES && sites >= Math.min(SITES, all);
        boolean many = lost.size() >= LEAST_DEVICES && 2 * lost.size() >= until.size();
        int misses = lost.stream().mapToInt(DeviceLook::misses).sum();
        return wide && many && misses >= LEAST_MISSES
                ? Optional.of(new Blind(
                        lost.stream()
                                .map(look -> look.lostSince().orElseThrow())
                                .min(Instant::compareTo)
                                .orElseThrow(),
                        false,
                        ids(lost),
                        sites,
                        all))
                : Optional.empty();
    }

    /**
     * Whether no round was stored for so long that every device is overdue.
     *
     * @param looks devices that are not paused
     * @param running since when this process watches
     */
    static Optional<Blind> stalled(Collection<DeviceLook> looks, Map<Long, Long> siteOf, Instant running, Instant now) {
        Optional<Instant> last =
                looks.stream().flatMap(look -> look.asked().stream()).max(Instant::compareTo);
        Duration interval = looks.stream()
                .map(DeviceLook::interval)
                .min(Duration::compareTo)
                .orElse(Duration.ZERO);
        Duration bound = Duration.ofMillis((long) (OVERDUE * interval.toMillis()));
        Duration patience = bound.compareTo(LEAST_STALL) > 0 ? bound : LEAST_STALL;
        if (last.isEmpty() || looks.stream().anyMatch(DeviceLook::watched)) {
            return Optional.empty();
        }
        Instant since = last.get().isAfter(running) ? last.get() : running;
        return now.isAfter(since.plus(patience))
                ? Optional.of(
                        new Blind(since, true, Set.of(), 0, sites(looks, siteOf).size()))
                : Optional.empty();
    }

    private static Set<Long> sites(Collection<DeviceLook> looks, Map<Long, Long> siteOf) {
        Set<Long> sites = new HashSet<>();
        looks.forEach(look -> sites.add(siteOf.get(look.deviceId())));
        return sites;
    }

    private static Set<Long> ids(Collection<DeviceLook> looks) {
        Set<Long> ids = new HashSet<>();
        looks.forEach(look -> ids.add(look.deviceId()));
        return ids;
    }
}
